/** Working a formula out, and writing its answer the way the build writes it. */
import { fromSI, roundAnswer, showNumber, tellingDecimals, words } from "./calculate.js";

/**
 * @param {string} name @param {Record<string, any>} values in SI
 * @param {string[]} otherwise what to say where a comparison of the formula does not hold
 * @returns {number} in SI; throws where nothing comes out
 */
export function workOut(name, values, otherwise) {
  const found = functionsOf(name);
  const broken = found.requires.findIndex((/** @type {any} */ holds) => !holds(values, words));
  if (broken >= 0) throw new Error(otherwise[broken] || "these numbers do not fit each other");
  const answer = found.answer(values, words);
  if (!Number.isFinite(answer)) throw new Error("nothing comes out of these numbers, check them against each other");
  return answer;
}

/** Put back into the formula, what was solved for must give the answer to this part of itself. */
const CLOSE = 1e-9;

/**
 * @param {string} name @param {string} wanted an input @param {Record<string, any>} values the others, and `answer`
 * @param {string[]} otherwise @returns {number} the input in SI; throws where no number of it gives the answer
 */
export function solveFor(name, wanted, values, otherwise) {
  const found = functionsOf(name).solve[wanted](values, words);
  if (!Number.isFinite(found)) throw new Error("no number gives this answer");
  const again = workOut(name, { ...values, [wanted]: found }, otherwise);
  if (!(Math.abs(again - values.answer) <= CLOSE * Math.max(Math.abs(again), Math.abs(values.answer)))) throw new Error("no number gives this answer");
  return found;
}

/** @param {string} name @param {Record<string, any>} values @returns {number} NaN where no wrong sum is told */
export function workOutNaively(name, values) {
  const naive = functionsOf(name).naive;
  return naive ? naive(values, words) : NaN;
}

/** @param {string} name @returns {any} */
function functionsOf(name) {
  const found = globalThis.newelFormulas && globalThis.newelFormulas[name];
  if (!found) throw new Error("this page does not hold the formula " + name);
  return found;
}

/** @param {number} value in SI @param {any} unit @param {number} decimals @param {string} toward @param {boolean} [clock] @returns {string} */
export function shownIn(value, unit, decimals, toward, clock) {
  const found = fromSI(value, unit);
  const kept = clock ? decimals : tellingDecimals(found, decimals, toward);
  const rounded = roundAnswer(found, kept, toward);
  if (clock && rounded >= 0 && rounded <= 1440) return clockText(rounded);
  return showNumber(rounded, Math.max(0, kept)) + (unit.shown ? "\u00a0" : "") + unit.shown;
}

/** @param {number} minutes after midnight @returns {string} "13:10" */
export function clockText(minutes) {
  const whole = Math.floor(minutes);
  return String(Math.floor(whole / 60)).padStart(2, "0") + ":" + String(whole % 60).padStart(2, "0");
}
