/** Working a formula out, and writing its answer the way the build writes it. */
import { fromSi } from "./boxes.js";

/** @param {string} name @param {Record<string, any>} values in SI @returns {number} in SI; throws where nothing comes out */
export function workOut(name, values) {
  const found = window.newel && window.newel.formulas && window.newel.formulas[name];
  if (!found) throw new Error("this page does not hold the formula " + name);
  const answer = found(values);
  if (!Number.isFinite(answer)) throw new Error("nothing comes out of these numbers, check them against each other");
  return answer;
}

/** @param {number} number @param {number} decimals @param {string} toward @returns {string} */
export function roundedText(number, decimals, toward) {
  const scale = 10 ** decimals;
  const scaled = number * scale;
  const whole = toward === "up" ? Math.ceil(scaled - 1e-9 * Math.abs(scaled)) : toward === "down" ? Math.floor(scaled + 1e-9 * Math.abs(scaled)) : Math.sign(scaled) * Math.floor(Math.abs(scaled) + 0.5);
  return (whole / scale + 0).toFixed(Math.max(0, decimals)).replace("-", "\u2212");
}

/** @param {number} value in SI @param {any} unit @param {number} decimals @param {string} toward @returns {string} */
export function shownIn(value, unit, decimals, toward) {
  const close = unit.shown === "" || unit.shown === "°" ? "" : "\u00a0";
  return roundedText(fromSi(value, unit), decimals, toward) + close + unit.shown;
}
