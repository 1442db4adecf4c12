/** Bench view: one step, large, the next action always in sight, big enough for a knuckle. */
import { all, button, make } from "./dom.js";
import { keep, recall } from "./store.js";

/** @param {string} procedure */
export function startBench(procedure) {
  const steps = all("[data-nw-step]");
  if (!steps.length) return;
  const key = "bench." + procedure;
  const title = make("p", { class: "nw-bench-title" });
  const back = button("Back", () => go(at() - 1));
  const next = button("Done, next step", () => {
    document.dispatchEvent(new CustomEvent("newel:done", { detail: steps[at()].dataset.nwStep }));
    go(at() + 1);
  }, "nw-main");
  const leave = button("Leave bench view", () => open(false));
  const bar = make("div", { class: "nw-bench-bar", role: "group", "aria-label": "Bench view" }, [back, title, leave, next]);
  const at = () => Math.max(0, steps.findIndex((step) => step.classList.contains("is-now")));
  const go = (/** @type {number} */ wanted) => {
    const index = Math.min(Math.max(wanted, 0), steps.length - 1);
    steps.forEach((step, number) => step.classList.toggle("is-now", number === index));
    back.disabled = index === 0;
    next.textContent = index === steps.length - 1 ? "Done" : "Done, next step";
    title.textContent = "Step " + (index + 1) + " of " + steps.length;
    keep(key, steps[index].dataset.nwStep);
    const stage = steps[index].closest(".nw-stage");
    all(".nw-stage").forEach((one) => one.classList.toggle("is-now", one === stage));
    steps[index].tabIndex = -1;
    steps[index].focus({ preventScroll: true });
    window.scrollTo(0, 0);
  };
  const open = (/** @type {boolean} */ is) => {
    document.documentElement.classList.toggle("nw-bench", is);
    bar.hidden = !is;
    if (!is) {
      steps[at()].scrollIntoView();
      return opener.focus();
    }
    const kept = recall(key);
    go(Math.max(0, steps.findIndex((step) => step.dataset.nwStep === kept)));
  };
  const opener = button("Open bench view", () => open(true), "nw-main");
  document.querySelector(".nw-head").append(make("p", { class: "nw-tool" }, [opener]));
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !bar.hidden) open(false);
  });
  bar.hidden = true;
  document.body.append(bar);
}
