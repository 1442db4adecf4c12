/** Check-off, readings and notes: kept on this device, taken back one by one or all at once, sent nowhere. */
import { momentOfDay, now } from "./clock.js";
import { all, button, make } from "./dom.js";

/** Lists of things to have ready. @param {import("./run.js").Run} run */
export function startTicks(run) {
  const boxes = all("[data-nw-ticks] input");
  for (const box of boxes) box.addEventListener("change", () => run.change((state) => setEntry(state.ready, box.value, box.checked && now())));
  run.watch((state) => boxes.forEach((box) => { box.checked = box.value in state.ready; }));
}

/** Sets an entry, or takes it out where there is none. */
function setEntry(table, key, value) {
  if (value) table[key] = value;
  else delete table[key];
}

/** A "done" box, a note and boxes for readings at every step, and how far the run is. @param {import("./run.js").Run} run */
export function startSteps(run) {
  const steps = all("[data-nw-step]");
  if (!steps.length) return;
  const shows = steps.map((step) => stepTools(step, run));
  const bar = make("div", { class: "nw-bar nw-tool" }, [progress(run, steps.length), make("div", { class: "nw-buttons" }, backButtons(run))]);
  const stage = document.querySelector(".nw-stage");
  (stage.previousElementSibling || stage).before(bar);
  run.watch((state) => shows.forEach((show) => show(state)));
}

/** @returns {HTMLElement} */
function progress(run, many) {
  const said = make("p", { class: "nw-progress", role: "status" });
  run.watch((/** @type {import("./run.js").RunState} */ state) => {
    const done = Object.keys(state.done).length;
    said.textContent = done ? done + " of " + many + " steps done" : "No step done yet";
  });
  return said;
}

/** @returns {HTMLElement[]} what takes back: the last tick, or all of it */
function backButtons(run) {
  /** @type {import("./run.js").RunState|null} */
  let cleared = null;
  const undo = button("Undo", () => {
    if (cleared) run.replace(cleared);
    else run.change((state) => delete state.done[lastDone(state)]);
    cleared = null;
    again();
  });
  const clear = button("Start over", () => {
    cleared = run.state();
    run.replace(null);
    again();
  });
  const again = () => {
    const state = run.state();
    undo.disabled = !cleared && !lastDone(state);
    undo.textContent = cleared ? "Undo starting over" : "Undo last step";
  };
  run.watch((state) => {
    if (lastDone(state)) cleared = null;
    again();
  });
  return [undo, clear];
}

/** @param {import("./run.js").RunState} state @returns {string} the step ticked last, "" for none */
function lastDone(state) {
  return Object.entries(state.done).reduce((last, one) => (one[1] >= last[1] ? one : last), ["", 0])[0];
}

/** @param {HTMLElement} step @returns {(state: import("./run.js").RunState) => void} shows it as it stands */
function stepTools(step, run) {
  const id = step.dataset.nwStep || "";
  const number = step.querySelector(".nw-step-number").textContent;
  const change = (table, key, value) => run.change((state) => setEntry(state[table], key, value));
  const box = make("input", { type: "checkbox", onchange: () => change("done", id, box.checked && now()) });
  const when = make("span", { class: "nw-when" });
  const label = make("label", { class: "nw-done nw-tool" }, [box, make("span", { class: "nw-hidden", text: "Done with step " + number }), when]);
  const note = make("textarea", { class: "nw-box", rows: "2", "aria-label": "What I did differently at step " + number, onchange: () => change("notes", id, note.value.trim()) });
  const more = make("details", { class: "nw-why nw-note nw-tool" }, [make("summary", { text: "I did something different" }), note]);
  // The box stands beside the sentence, so it is come to right after it.
  step.querySelector(".nw-step-say").after(label);
  step.querySelector(".nw-step-main").append(more);
  const readings = [...step.querySelectorAll("[data-nw-reading]")].map((cell) => readingBox(cell, id, change));
  return (state) => {
    box.checked = id in state.done;
    step.classList.toggle("is-done", box.checked);
    when.textContent = box.checked ? momentOfDay(state.done[id]) : "";
    fill(note, state.notes[id]);
    if (state.notes[id]) more.open = true;
    readings.forEach(([key, entry]) => fill(entry, state.readings[key]));
  };
}

/** A box being typed into is left alone. */
function fill(entry, text) {
  if (document.activeElement !== entry) entry.value = text || "";
}

/** @returns {[string, HTMLInputElement]} */
function readingBox(cell, step, change) {
  const key = step + "/" + cell.dataset.nwReading;
  const entry = make("input", { class: "nw-box nw-tool", "aria-label": cell.dataset.nwLabel, onchange: () => change("readings", key, entry.value.trim()) });
  cell.prepend(entry);
  return [key, entry];
}
