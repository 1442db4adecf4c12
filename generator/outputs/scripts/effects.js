/** What a wrong number does to an answer, and what the wrong sum gives, in sentences; as the build says them. */
import { fromSI, isOutside, showNumber, toSI } from "./calculate.js";
import { workOut, workOutNaively } from "./sums.js";

const TENTH = 0.1;
const DEGREES = 5;
/** A wrong sum that is this many per cent out, or more, is told as a multiple. */
const MULTIPLE = 200;

/** @typedef {{data: any, values: Record<string, any>, numbers: Record<string, {number: number, unit: any}>, right: number, show: (value: number) => string}} Found */

/** @param {Found} found @returns {string[]} one sentence an input */
export function effectSentences(found) {
  return found.data.boxes.filter((/** @type {any} */ box) => box.kind === "quantity" && !box.whole && !box.clock)
    .map((/** @type {any} */ box) => sentenceFor(box, found)).filter(Boolean);
}

/** @param {any} box @param {Found} found @returns {string} */
function sentenceFor(box, found) {
  const parts = [-1, 1].map((sign) => shifted(box, sign, found)).filter(Boolean);
  const right = found.show(found.right);
  if (parts.every((part) => part.endsWith(" gives " + right))) return "";
  parts[0] += " instead of " + right;
  return named(box.name) + " " + parts.join(", ") + ".";
}

/** @param {any} box @param {number} sign @param {Found} found @returns {string} */
function shifted(box, sign, found) {
  const { number, unit } = found.numbers[box.name];
  if (!number) return "";
  const moved = toSI(unit.offset ? number + sign * DEGREES : number * (1 + sign * TENTH), unit);
  if (isOutside(moved, box.low, box.high)) return "";
  const far = (unit.offset ? DEGREES + " degrees " : "10\u00a0% ") + (sign < 0 ? "low" : "high");
  try {
    return far + " gives " + found.show(workOut(found.data.name, { ...found.values, [box.name]: moved }, found.data.requires));
  } catch {
    return "";
  }
}

/** @param {Found} found @returns {string} the wrong sum beside the right one */
export function naiveSentence(found) {
  const wrong = workOutNaively(found.data.name, found.values);
  if (!Number.isFinite(wrong)) return "";
  return "A sum that forgets " + found.data.naive + " gives " + found.show(wrong) + (found.data.clock ? "" : howWrong(fromSI(found.right, found.data.units[0]), fromSI(wrong, found.data.units[0]))) + ".";
}

/** @param {number} right @param {number} wrong @returns {string} */
function howWrong(right, wrong) {
  if (!right) return "";
  const part = (100 * (wrong - right)) / right;
  if (part >= MULTIPLE) return ", " + twoFigures(wrong / right) + " times the right one";
  if (Math.abs(part) < 1) return part ? ", less than 1\u00a0% away" : ", the same here";
  return ", " + Math.abs(part).toFixed(0) + "\u00a0% too " + (part < 0 ? "low" : "high");
}

/** @param {number} number @returns {string} */
function twoFigures(number) {
  const rounded = Number(number.toPrecision(2));
  return showNumber(rounded, rounded < 10 ? 1 : 0);
}

/** @param {string} name @returns {string} a name as words */
export function named(name) {
  const words = name.replace(/[-_]/g, " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
