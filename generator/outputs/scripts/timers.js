/**
 * Timers that outlive a locked phone, a reload and a second window: what is kept is the time of day at which one
 * ends. Where the window stands is said in words and by a shape, and what to do first is said before zero.
 */
import { countdown, momentOfDay, now } from "./clock.js";
import { all, button, make, repeat, whileHere } from "./dom.js";
import { sound } from "./sound.js";

/** How long before zero it is said what to do first: a tenth of the time, in ms, and at most this. */
const WARNING = 60000;
const MINUTE = 60000;
/** A clock that stands so far before the start of a timer, in ms, was put back. */
const BACK = 2000;
const SHAPES = { wait: "○", in: "●", late: "✕" };

/** @typedef {import("./run.js").Timer} Timer */
/** @typedef {{id: string, seconds: number, low: number, high: number, first: string, number: string}} Asked */

/** @param {import("./run.js").Run} run */
export function startTimers(run) {
  const places = all("[data-nw-timer]");
  if (!places.length) return;
  const title = document.title;
  const faces = places.map((place) => timerAt(place, run));
  const list = make("ul", { class: "nw-running nw-tool", "aria-label": "Running timers", hidden: true });
  document.querySelector("article").append(list);
  const show = () => {
    const running = faces.map((face) => face()).filter((one) => one !== null).sort((a, b) => a.left - b.left);
    list.hidden = !running.length;
    showRunning(list, running);
    document.title = running.length ? countdown(running[0].left / 1000) + " step " + running[0].number + " · " + title : title;
  };
  repeat(show, 250);
  run.watch(show);
  for (const event of ["visibilitychange", "pageshow"]) document.addEventListener(event, show, { signal: whileHere() });
}

/** One line for each running timer, the next to end first. */
function showRunning(list, running) {
  while (list.children.length > running.length) list.lastChild.remove();
  running.forEach((one, index) => {
    const line = list.children[index] || list.appendChild(make("li", {}, [make("a", {})]));
    const link = line.firstChild;
    line.classList.toggle("is-over", one.left <= 0);
    link.href = "#" + one.id;
    link.textContent = "Step " + one.number + " · " + countdown(one.left / 1000);
  });
}

/** @returns {() => ({id: string, number: string, left: number}|null)} shows the timer as it stands now */
function timerAt(place, run) {
  const asked = () => askedAt(place);
  const id = asked().id;
  const face = faceOf(place);
  const said = { warned: 0, rung: 0 };
  const set = (act) => { run.change(act); sound.prepare(); };
  face.start.addEventListener("click", () => {
    const began = now();
    set((state) => { state.timers[id] = { began, ends: began + 1000 * asked().seconds }; });
    face.stop.focus();
  });
  face.more.addEventListener("click", () => set((state) => { if (state.timers[id]) state.timers[id].ends = Math.max(state.timers[id].ends, now()) + MINUTE; }));
  face.stop.addEventListener("click", () => {
    set((state) => {
      if (state.timers[id]) state.timed[id] = { began: state.timers[id].began, stopped: now() };
      delete state.timers[id];
    });
    face.start.focus();
  });
  return () => {
    const timer = run.state().timers[id];
    const runs = Boolean(timer) && Number.isFinite(timer.began) && Number.isFinite(timer.ends);
    for (const part of [face.left, face.first, face.more, face.stop, face.state]) part.hidden = !runs;
    face.start.hidden = runs;
    face.start.disabled = !(asked().seconds > 0);
    place.classList.toggle("is-over", runs && now() >= timer.ends);
    return runs ? showTimer(face, timer, asked(), said) : null;
  };
}

/** @returns {Asked} as the step asks now; a student's own part may have moved the seconds */
function askedAt(place) {
  const { nwTimer, seconds, low, high, first } = place.dataset;
  const number = place.closest("[data-nw-step]").querySelector(".nw-step-number").textContent;
  return { id: nwTimer, seconds: Number(seconds), low: Number(low || 0), high: Number(high || 0), first: first || "", number };
}

function faceOf(place) {
  const face = {
    left: make("p", { class: "nw-left" }),
    state: make("p", { class: "nw-in-window" }),
    first: make("p", { class: "nw-first" }),
    start: button("Start timer", () => {}),
    more: button("1 min more", () => {}),
    stop: button("Stop", () => {}),
    alert: make("p", { class: "nw-hidden", role: "alert" }),
  };
  place.replaceChildren(...Object.values(face));
  return face;
}

/** Shows a running timer and calls for the one who waits. */
function showTimer(face, timer, asked, said) {
  const left = timer.ends - now();
  const [shape, words] = standing(timer, asked);
  face.left.textContent = countdown(left / 1000);
  showText(face.state, SHAPES[shape] + " " + words);
  showText(face.first, asked.first);
  const warning = Math.min(WARNING, (timer.ends - timer.began) / 10);
  if (left > 0 && left <= warning && said.warned !== timer.ends) {
    said.warned = timer.ends;
    face.alert.textContent = "Soon, at step " + asked.number + ". " + asked.first;
  }
  if (left <= 0) sound.ring();
  if (left <= 0 && said.rung !== timer.ends) {
    said.rung = timer.ends;
    face.alert.textContent = "Time is over. " + asked.first;
  }
  return { id: asked.id, number: asked.number, left };
}

/** A text that stays as it was is not written again, so that nothing is read out twice. */
function showText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** Where the time stands in its window. @param {Timer} timer @param {Asked} asked @returns {["wait"|"in"|"late", string]} */
function standing(timer, asked) {
  const since = (now() - timer.began) / 1000;
  const at = (/** @type {number} */ seconds) => momentOfDay(timer.began + 1000 * seconds);
  if (since * 1000 < -BACK) return ["wait", "This device’s clock was put back. Go by the clock on the wall: it ends at " + momentOfDay(timer.ends) + "."];
  if (asked.low && since < asked.low) return ["wait", "Too early. In the window from " + at(asked.low) + "."];
  if (asked.high && since > asked.high) return ["late", "Too late since " + at(asked.high) + "."];
  if (asked.low || asked.high) return ["in", "In the window" + (asked.high ? ", until " + at(asked.high) + "." : ".")];
  return now() < timer.ends ? ["wait", "Not yet: until " + momentOfDay(timer.ends) + "."] : ["late", "Over since " + momentOfDay(timer.ends) + "."];
}
