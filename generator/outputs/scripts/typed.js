/** What was typed: a number with or without its unit, or a time of day; refused with the reason. */
import { isOutside, toSI } from "./calculate.js";

/** @typedef {{symbol: string, shown: string, numerator: number, denominator: number, offset: number, spellings: string[]}} Unit */
/** @typedef {{value: any, wrong: string, unusual: string, unit?: Unit, number?: number}} Answer */

const PLAIN = { symbol: "", shown: "", numerator: 1, denominator: 1, offset: 0, spellings: [] };
const NUMBER = /^([+-]?[0-9]+(?:\.[0-9]+)?(?:e[+-]?[0-9]{1,3})?)(.*)$/i;
/** Beyond these no bench has anything. */
const LARGEST = 1e30;

/** @param {string} text @returns {string} one way of writing what keyboards write in many */
function tidy(text) {
  return text.normalize("NFKC").replace(/[\u2212\u2013]/g, "-").replace(/\u03bc/g, "u").replace(/\u03a9/g, "ohm")
    .replace(/\u00b0 ?/g, "deg").replace(/[\u00b7\u22c5^]/g, " ").replace(/\s*\/\s*/g, "/").trim().replace(/\s+/g, " ");
}

/** @param {string} text @param {Unit[]} units @returns {Unit|undefined} */
export function unitNamed(text, units) {
  const bare = (/** @type {string} */ name) => tidy(name).replace(/ /g, "");
  return units.find((unit) => [unit.symbol, unit.shown, ...unit.spellings].some((name) => bare(name) === bare(text)));
}

/** @param {string} text @returns {number} the number that was typed, NaN for anything else */
export function readNumber(text) {
  const found = NUMBER.exec(tidy(text));
  return found && !found[2] ? Number(found[1]) : NaN;
}

/** @param {string} text "13:10" @returns {number} minutes after midnight, NaN for anything else */
function readClock(text) {
  const found = /^([0-9]{1,2}):([0-9]{2})$/.exec(text.trim());
  return found && Number(found[1]) < 24 && Number(found[2]) < 60 ? 60 * Number(found[1]) + Number(found[2]) : NaN;
}

/** @param {any} box @param {string} text @param {Unit} [unit] the one beside the box @returns {Answer} */
export function judge(box, text, unit) {
  const wrong = (/** @type {string} */ what) => ({ value: NaN, wrong: box.label + ": " + what + ".", unusual: "" });
  const typed = tidy(text);
  if (!typed) return wrong("a number is missing");
  if (box.clock && typed.includes(":")) {
    const minutes = readClock(typed);
    return Number.isNaN(minutes) ? wrong("write a time of day such as 13:10") : inRange(box, minutes, box.units[0], wrong);
  }
  if (/[0-9],[0-9]/.test(typed)) return wrong("write the number with a point, such as " + typed.replace(",", "."));
  const found = NUMBER.exec(typed);
  if (!found || /^[0-9.,]/.test(found[2].trim())) return wrong("“" + shortened(typed) + "” is no number");
  const named = found[2].trim();
  const taken = named ? unitNamed(named, box.units) : unit || PLAIN;
  if (!taken) return wrong("“" + shortened(named) + "” is no unit for this; " + offered(box.units));
  return inRange(box, Number(found[1]), taken, wrong);
}

/** @param {Unit[]} units @returns {string} */
function offered(units) {
  return units.length ? "write it in " + units.map((unit) => unit.shown).join(" or ") : "write the number alone";
}

/** @param {string} text @returns {string} */
function shortened(text) {
  return text.length > 20 ? text.slice(0, 20) + "…" : text;
}

/** @param {any} box @param {number} number @param {Unit} unit @param {(what: string) => Answer} wrong @returns {Answer} */
function inRange(box, number, unit, wrong) {
  const value = toSI(number, unit);
  if (!Number.isFinite(value) || Math.abs(number) >= LARGEST) return wrong("this is too large for any bench, check the power of ten");
  if (box.whole && !Number.isInteger(number)) return wrong("this is a count, write a whole number");
  const because = box.because ? ", because " + box.because : "";
  if (isOutside(value, box.low, box.high)) return wrong("must be " + box.hard + because);
  const fence = (box.fences || []).find((/** @type {any} */ one) => isOutside(value, one.low, one.high));
  if (fence) return wrong(fence.says);
  if (isOutside(value, null, box.never)) return wrong("never above " + box.never_shown + " in this lab");
  const odd = isOutside(value, box.usual_low, box.usual_high);
  return { value, wrong: "", unusual: odd ? box.label + " is usually " + box.usual + ". Look again." : "", unit, number };
}
