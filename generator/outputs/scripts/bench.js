/** Bench view: one step, large, the next action always in sight, big enough for a knuckle. */
import { now } from "./clock.js";
import { all, button, make, whileHere } from "./dom.js";
import { keep, recall } from "./store.js";

/** Keeps the screen awake while bench view is open, where the device can; asked again when it comes back. */
const screen_light = {
  /** @type {any} */
  held: null,
  async hold() {
    try {
      this.held = await navigator.wakeLock?.request("screen");
    } catch {
      this.held = null; // low battery, or the page is not in front: the screen goes dark as it always would
    }
  },
  release() {
    this.held?.release();
    this.held = null;
  },
};

/** @param {string} procedure @param {import("./run.js").Run} run */
export function startBench(procedure, run) {
  const steps = all("[data-nw-step]");
  if (!steps.length) return;
  const key = "bench." + procedure;
  const title = make("p", { class: "nw-bench-title" });
  const back = button("Back", () => go(at() - 1));
  const next = button("Done, next step", () => {
    const id = steps[at()].dataset.nwStep;
    run.change((state) => { state.done[id] = now(); });
    go(at() + 1);
  }, "nw-main");
  const leave = button("Leave bench view", () => open(false));
  const bar = make("div", { class: "nw-bench-bar", role: "region", "aria-label": "Bench view" }, [back, title, leave, next]);
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
    if (is) screen_light.hold();
    else screen_light.release();
    if (!is) {
      // One stays at the step, by eye and by keyboard.
      steps[at()].focus({ preventScroll: true });
      return steps[at()].scrollIntoView();
    }
    const kept = recall(key);
    go(Math.max(0, steps.findIndex((step) => step.dataset.nwStep === kept)));
  };
  const opener = button("Open bench view", () => open(true), "nw-main");
  document.querySelector(".nw-head").append(make("p", { class: "nw-tool" }, [opener]));
  document.addEventListener("keydown", (event) => {
    if (bar.hidden || event.target.closest("input, textarea, select")) return;
    if (event.key === "Escape") open(false);
    if (event.key === "ArrowRight") go(at() + 1);
    if (event.key === "ArrowLeft") go(at() - 1);
  }, { signal: whileHere() });
  document.addEventListener("visibilitychange", () => {
    if (!bar.hidden && !document.hidden) screen_light.hold();
  }, { signal: whileHere() });
  bar.hidden = true;
  document.body.append(bar);
  whileHere().addEventListener("abort", () => bar.remove());
}
