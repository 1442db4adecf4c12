/** Working a formula out, and writing its answer the way the build writes it. */
import { fromSI, roundAnswer, showNumber, words } from "./calculate.js";

/**
 * @param {string} name @param {Record<string, any>} values in SI
 * @param {string[]} otherwise what to say where a comparison of the formula does not hold
 * @returns {number} in SI; throws where nothing comes out
 */
export function workOut(name, values, otherwise) {
  const found = globalThis.newelFormulas && globalThis.newelFormulas[name];
  if (!found) throw new Error("this page does not hold the formula " + name);
  const broken = found.requires.findIndex((/** @type {any} */ holds) => !holds(values, words));
  if (broken >= 0) throw new Error(otherwise[broken] || "these numbers do not fit each other");
  const answer = found.answer(values, words);
  if (!Number.isFinite(answer)) throw new Error("nothing comes out of these numbers, check them against each other");
  return answer;
}

/** @param {number} value in SI @param {any} unit @param {number} decimals @param {string} toward @returns {string} */
export function shownIn(value, unit, decimals, toward) {
  const number = showNumber(roundAnswer(fromSI(value, unit), decimals, toward), Math.max(0, decimals));
  return number + (unit.shown ? "\u00a0" : "") + unit.shown;
}
