/** The session clock: finish, latest start, the latest moment for what cannot be undone, where to pause. */
import { make, pageData } from "./dom.js";
import { minutesOf, spanOf, timeOfDay } from "./clock.js";

/** @typedef {{id: string, number: string, minutes: number, hands_on: number, sum: string, pause: string, must: boolean, point: string}} PlanStep */
/** @typedef {{name: string, start: number, end: number, shown: string}} Session */

/** Adds the clock to its place; it follows the numbers of one's own part. */
export function startPlan() {
  const place = document.querySelector("[data-nw-plan]");
  const data = pageData("session_plan_data");
  if (!place || !data) return;
  const choice = make("select", { class: "nw-box", onchange: () => { start.value = ""; show(); } },
    data.sessions.map((/** @type {Session} */ session, /** @type {number} */ index) => make("option", { value: index, text: session.shown })));
  const start = make("input", { type: "time", class: "nw-box", oninput: () => show() });
  const answer = make("div", { class: "nw-answer", role: "status" });
  const show = () => {
    const session = data.sessions[Number(choice.value)];
    const begins = Number.isNaN(minutesOf(start.value)) ? session.start : minutesOf(start.value);
    answer.replaceChildren(...answerFor(data.steps, session, begins, data.pack_up));
  };
  document.addEventListener("newel:sums", (event) => {
    for (const step of data.steps) if (step.sum) step.minutes = step.hands_on + event.detail[step.sum] / 60;
    show();
    showElsewhere(data);
  });
  place.append(make("div", { class: "nw-fields" }, [
    make("label", { class: "nw-field" }, [make("span", { text: "Session" }), choice]),
    make("label", { class: "nw-field" }, [make("span", { text: "I start at" }), start]),
  ]), answer);
  show();
}

/**
 * @param {PlanStep[]} steps @param {Session} session @param {number} begins @param {number} packUp minutes
 * @returns {HTMLElement[]}
 */
function answerFor(steps, session, begins, packUp) {
  const sitting = steps.slice(0, restAfter(steps, 0) + 1);
  const total = minutesOfAll(sitting);
  if (Number.isNaN(total)) return [make("p", { class: "nw-verdict", text: "A time has no answer. Look at the numbers of your part." })];
  const ends = session.end - packUp;
  const fits = begins + total <= ends;
  const lines = [
    [sitting.length < steps.length ? "Finish of the first sitting" : "Finish", timeOfDay(begins + total)],
    ["Latest start for the whole " + (sitting.length < steps.length ? "sitting" : "run"), latestOf(ends - total, session) || "does not fit this session"],
    ...momentsOf(steps, begins, ends, session),
  ];
  const verdict = fits
    ? "Fits, with " + spanOf(ends - begins - total) + " to spare before packing up at " + timeOfDay(ends) + "."
    : "Does not fit in one go: work must end at " + timeOfDay(ends) + ". " + wayOut(steps, latestOf(ends - total, session));
  return [
    make("p", { class: "nw-verdict", text: verdict }),
    make("dl", { class: "nw-times" }, lines.map(([label, time]) => make("div", {}, [make("dt", { text: label }), make("dd", { text: time })]))),
  ];
}

/** @param {PlanStep[]} steps @param {string} latest start of the whole, "" for none @returns {string} what to do about it */
function wayOut(steps, latest) {
  if (latest) return "Start by " + latest + (steps.some((step) => step.pause) ? ", or stop at a pause below." : ".");
  return steps.some((step) => step.pause) ? "Stop at a pause below." : "Choose a longer session.";
}

/** @param {PlanStep[]} steps @returns {number} NaN where a time has no answer */
function minutesOfAll(steps) {
  return steps.reduce((sum, step) => sum + step.minutes, 0);
}

/** The whole run, the stages and the table of sessions, where they say how long something takes. */
function showElsewhere(data) {
  const total = minutesOfAll(data.steps);
  for (const place of document.querySelectorAll('[data-nw-sum="plan.total"]')) place.textContent = Number.isNaN(total) ? "no answer" : spanOf(total);
  const timed = data.steps.filter((/** @type {PlanStep} */ step) => step.sum).map((/** @type {PlanStep} */ step) => step.id);
  for (const place of document.querySelectorAll("[data-nw-stage-time]")) {
    const stage = place.closest("section");
    const ids = stage ? [...stage.querySelectorAll("[data-nw-step]")].map((step) => step.id) : [];
    if (ids.some((id) => timed.includes(id))) place.textContent = aboutOf(minutesOfAll(data.steps.filter((/** @type {PlanStep} */ step) => ids.includes(step.id))));
  }
  data.sessions.forEach((/** @type {Session} */ session, /** @type {number} */ index) => showSession(data, session, index, total));
}

/** @param {number} minutes @returns {string} */
function aboutOf(minutes) {
  return Number.isNaN(minutes) ? "No answer" : "About " + spanOf(minutes);
}

/** One row of the table of sessions. */
function showSession(data, session, index, total) {
  const fits = document.querySelector('[data-nw-fits="' + index + '"]');
  const latest = document.querySelector('[data-nw-latest="' + index + '"]');
  if (!fits || !latest) return;
  const ends = session.end - data.pack_up;
  const sittings = partsOf(data.steps, (step) => step.must);
  const stretches = partsOf(data.steps, (step) => step.pause !== "");
  const fit = (/** @type {number[]} */ parts) => Math.max(...parts) <= ends - session.start;
  const words = sittings.length > 1 ? "in " + sittings.length + " sittings" : "the whole run";
  fits.textContent = fit(sittings) ? words : fit(stretches) ? "with a pause" : "no";
  const begin = fit(sittings) ? sittings[0] : fit(stretches) ? stretches[0] : Infinity;
  latest.textContent = latestOf(ends - begin, session) || "none";
}

/** @param {PlanStep[]} steps @param {(step: PlanStep) => boolean} ends @returns {number[]} minutes of the parts that these steps end */
function partsOf(steps, ends) {
  const parts = [0];
  steps.forEach((step, index) => {
    parts[parts.length - 1] += step.minutes;
    if (ends(step) && index < steps.length - 1) parts.push(0);
  });
  return parts;
}

/**
 * @param {PlanStep[]} steps @param {number} begins @param {number} ends @param {Session} session
 * @returns {string[][]}
 */
function momentsOf(steps, begins, ends, session) {
  const lines = [];
  const last = restAfter(steps, 0);
  let clock = begins;
  steps.forEach((step, index) => {
    if (step.point) lines.push([step.point + ", latest moment", lastEntry(steps, index, ends, session)]);
    clock += step.minutes;
    if (step.pause && index <= last) lines.push([(step.must ? "Pause (" : "May pause (") + step.pause + ")", timeOfDay(clock) + (clock <= ends ? "" : ", too late")]);
  });
  return lines;
}

/**
 * The latest moment to reach the next pause, and to reach the end of the sitting where that is further.
 * @param {PlanStep[]} steps @param {number} from @param {number} ends @param {Session} session @returns {string}
 */
function lastEntry(steps, from, ends, session) {
  const rest = restAfter(steps, from);
  const pause = steps.findIndex((step, index) => index >= from && step.pause !== "");
  const stop = pause < 0 ? rest : pause;
  const first = latestOf(ends - minutesOfAll(steps.slice(from, stop + 1)), session);
  if (!first) return "not in this session";
  if (stop === steps.length - 1) return first;
  const whole = stop === rest ? "" : latestOf(ends - minutesOfAll(steps.slice(from, rest + 1)), session);
  return first + " if you stop after step " + steps[stop].number + (whole ? ", " + whole + " if you go on to the end" : "");
}

/** @param {PlanStep[]} steps @param {number} from @returns {number} the step behind which work has to rest, or the last */
function restAfter(steps, from) {
  const found = steps.findIndex((step, index) => index >= from && step.must);
  return found < 0 ? steps.length - 1 : found;
}

/** @param {number} minutes @param {Session} session @returns {string} a whole minute that is not too late, or "" */
function latestOf(minutes, session) {
  return minutes >= session.start ? timeOfDay(Math.floor(minutes + 1e-6)) : "";
}
