/**
 * Timers that outlive a locked phone and a reload: what is kept is the time of day at which one ends.
 * What to do first is shown before zero, so that nobody reads it with the alarm in the ear.
 */
import { all, button, make } from "./dom.js";
import { countdown } from "./clock.js";
import { keep, recall } from "./store.js";
import { sound } from "./sound.js";

/** @param {string} procedure */
export function startTimers(procedure) {
  const timers = all("[data-nw-timer]").map((place) => timerAt(place, "timer." + procedure + "." + place.dataset.nwTimer));
  if (!timers.length) return;
  setInterval(() => timers.forEach((show) => show()), 250);
  document.addEventListener("visibilitychange", () => timers.forEach((show) => show()));
}

/** @param {HTMLElement} place @param {string} key @returns {() => void} shows the timer as it stands now */
function timerAt(place, key) {
  let ends = recall(key);
  let rung = false;
  const left = make("p", { class: "nw-left" });
  const first = make("p", { class: "nw-first" });
  const alert = make("p", { class: "nw-hidden", role: "alert" });
  const start = button("Start timer", () => set(Date.now() + 1000 * Number(place.dataset.seconds)));
  const stop = button("Stop", () => set(null));
  const set = (/** @type {number|null} */ end) => {
    ends = end;
    rung = false;
    alert.textContent = "";
    keep(key, end);
    sound.prepare();
    show();
    (end === null ? start : stop).focus();
  };
  const show = () => {
    const runs = typeof ends === "number";
    const seconds = runs ? (ends - Date.now()) / 1000 : 0;
    start.hidden = runs;
    stop.hidden = left.hidden = first.hidden = !runs;
    place.classList.toggle("is-over", runs && seconds <= 0);
    if (!runs) return;
    left.textContent = countdown(seconds);
    first.textContent = place.dataset.first;
    if (seconds <= 0) sound.ring();
    if (seconds <= 0 && !rung) {
      rung = true;
      alert.textContent = "Time is over. " + place.dataset.first;
    }
  };
  place.append(left, first, start, stop, alert);
  show();
  return show;
}
