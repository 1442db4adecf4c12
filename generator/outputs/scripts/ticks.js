/** Check-off: kept on this device, put back to empty by one button, sent nowhere. */
import { all, button, make } from "./dom.js";
import { keep, recall } from "./store.js";

/** Lists of things to have ready. */
export function startTicks() {
  for (const list of all("[data-nw-ticks]")) {
    const key = "ticks." + list.dataset.nwTicks;
    const boxes = [...list.querySelectorAll("input")];
    const kept = recall(key) || [];
    for (const box of boxes) {
      box.checked = kept.includes(box.value);
      box.addEventListener("change", () => keep(key, boxes.filter((one) => one.checked).map((one) => one.value)));
    }
  }
}

/** A "done" box at every step, and how far the run is. @param {string} procedure */
export function startSteps(procedure) {
  const steps = all("[data-nw-step]");
  if (!steps.length) return;
  const key = "done." + procedure;
  const done = new Set(recall(key) || []);
  const said = make("p", { class: "nw-progress", role: "status" });
  const show = () => {
    for (const step of steps) {
      const is = done.has(step.dataset.nwStep);
      step.classList.toggle("is-done", is);
      step.querySelector(".nw-done input").checked = is;
    }
    said.textContent = done.size ? done.size + " of " + steps.length + " steps done" : "No step done yet";
  };
  for (const step of steps) {
    const box = make("input", { type: "checkbox", onchange: () => mark(step.dataset.nwStep, box.checked) });
    const number = step.querySelector(".nw-step-number").textContent;
    const label = make("label", { class: "nw-done nw-tool" }, [box, make("span", { class: "nw-hidden", text: "Done with step " + number })]);
    step.querySelector(".nw-step-main").append(label);
  }
  const mark = (id, is) => {
    if (is) done.add(id);
    else done.delete(id);
    keep(key, [...done]);
    show();
  };
  const clear = button("Start over", () => { done.clear(); keep(key, null); show(); });
  const bar = make("div", { class: "nw-bar nw-tool" }, [said, clear]);
  document.querySelector(".nw-stage").before(bar);
  document.addEventListener("newel:done", (event) => mark(event.detail, true));
  show();
}
