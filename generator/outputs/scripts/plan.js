/** The session clock: finish, latest start, the latest moment for what cannot be undone, where to pause. */
import { make, pageData } from "./dom.js";
import { minutesOf, spanOf, timeOfDay } from "./clock.js";

/** @typedef {{id: string, minutes: number, hands_on: number, sum: string, pause: string, point: string}} PlanStep */
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
  const total = minutesOfAll(steps);
  if (Number.isNaN(total)) return [make("p", { class: "nw-verdict", text: "A time has no answer. Look at the numbers of your part." })];
  const ends = session.end - packUp;
  const fits = begins + total <= ends;
  const lines = [
    ["Finish", timeOfDay(begins + total)],
    ["Latest start for the whole run", ends - total >= session.start ? timeOfDay(ends - total) : "does not fit this session"],
    ...momentsOf(steps, begins, ends),
  ];
  const verdict = fits
    ? "Fits, with " + spanOf(ends - begins - total) + " to spare before packing up at " + timeOfDay(ends) + "."
    : "Does not fit: work must end at " + timeOfDay(ends) + ". Stop at a pause below, or start earlier.";
  return [
    make("p", { class: "nw-verdict", text: verdict }),
    make("dl", { class: "nw-times" }, lines.map(([label, time]) => make("div", {}, [make("dt", { text: label }), make("dd", { text: time })]))),
  ];
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
  const room = session.end - data.pack_up - session.start;
  const longest = Math.max(...data.steps.map((/** @type {PlanStep} */ _, /** @type {number} */ at) => untilPause(data.steps, at)));
  fits.textContent = total <= room ? "the whole run" : longest <= room ? "with a pause" : "no";
  latest.textContent = total <= room ? timeOfDay(Math.floor(session.end - data.pack_up - total)) : longest <= room ? "see the clock below" : "none";
}

/** @param {PlanStep[]} steps @param {number} begins @param {number} ends @returns {string[][]} */
function momentsOf(steps, begins, ends) {
  const lines = [];
  let clock = begins;
  steps.forEach((step, index) => {
    if (step.point) lines.push([step.point + ", latest moment", timeOfDay(ends - untilPause(steps, index))]);
    clock += step.minutes;
    if (step.pause) lines.push(["May pause (" + step.pause + ")", timeOfDay(clock) + (clock <= ends ? "" : ", too late")]);
  });
  return lines;
}

/** @param {PlanStep[]} steps @param {number} from @returns {number} minutes to the end of the next pause or run */
function untilPause(steps, from) {
  let minutes = 0;
  for (const step of steps.slice(from)) {
    minutes += step.minutes;
    if (step.pause) break;
  }
  return minutes;
}
