/** The answer against one input, drawn again when a number changes by the rules of the build's own drawing. */
import { fromSI, isOutside, showNumber, toSI } from "./calculate.js";
import { named } from "./effects.js";
import { clockText, workOut } from "./sums.js";

const POINTS = 40;
const STEPS = [1, 2, 5, 10];
const CLOCK_STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 240, 480];
const [WIDTH, HEIGHT, TOP, BOTTOM, RIGHT, LETTER] = [320, 210, 26, 166, 302, 6.4];

/** @typedef {{label: string, low: number, high: number, marks: [number, string][]}} Axis */

/** @param {import("./effects.js").Found} found @param {any} along a box @param {any} unit of the answer @returns {Element|null} */
export function chartOf(found, along, unit) {
  const at = found.numbers[along.name];
  const [left, right] = reach(along, at);
  const points = numbersOf(left, right, along.whole).map((x) => [x, answerAt(found, along, toSI(x, at.unit), unit)]);
  const ys = points.map(([, y]) => y).filter((y) => y !== null);
  const here = fromSI(found.right, unit);
  if (ys.length < 2) return null;
  const [least, most] = answerSpan([...ys, here], found.data.clock);
  const y = axisOf(labelOf(found.data.answer_label, found.data.clock ? "" : unit.shown), least, most, found.data.clock, true);
  const x = axisOf(labelOf(named(along.name), along.clock ? "" : at.unit.shown), left, right, along.clock, false);
  return drawing(x, y, points, [at.number, here], found.data.answer_label + " against " + named(along.name).toLowerCase());
}

/** @param {any} box @param {{number: number, unit: any}} at @returns {number[]} what is usual, and the value itself */
function reach(box, at) {
  const usual = box.usual_low !== null && box.usual_high !== null;
  const ends = usual ? [fromSI(box.usual_low, at.unit), fromSI(box.usual_high, at.unit)] : [at.number * 0.5, at.number * 1.5].sort((a, b) => a - b);
  const [left, right] = [Math.min(ends[0], at.number), Math.max(ends[1], at.number)];
  return left < right ? [left, right] : [left, left + 1];
}

/** @param {number} left @param {number} right @param {boolean} whole @returns {number[]} */
function numbersOf(left, right, whole) {
  const step = whole ? Math.max(1, Math.ceil((right - left) / POINTS)) : 0;
  const count = whole ? Math.floor((right - left) / step) : POINTS;
  return Array.from({ length: count + 1 }, (_, n) => (whole ? left + step * n : left + ((right - left) * n) / POINTS));
}

/** @returns {number|null} */
function answerAt(found, along, value, unit) {
  if (isOutside(value, along.low, along.high)) return null;
  try {
    return fromSI(workOut(found.data.name, { ...found.values, [along.name]: value }, found.data.requires), unit);
  } catch {
    return null;
  }
}

/** @param {number[]} ys @param {boolean} clock @returns {number[]} from nothing where the most is more than twice the least */
function answerSpan(ys, clock) {
  const [least, most] = [Math.min(...ys), Math.max(...ys)];
  if (least > 0 && least < most / 2 && !clock) return [0, most];
  return least < most ? [least, most] : [least - 1, least + 1];
}

/** @param {string} label @param {number} low @param {number} high @param {boolean} clock @param {boolean} closed @returns {Axis} */
function axisOf(label, low, high, clock, closed) {
  const step = stepOf((high - low) / 4, clock);
  const first = closed ? Math.floor(low / step + 1e-9) : Math.ceil(low / step - 1e-9);
  const last = closed ? Math.ceil(high / step - 1e-9) : Math.floor(high / step + 1e-9);
  const decimals = Math.max(0, -powerOf(step));
  const mark = (/** @type {number} */ number) => (clock && number >= 0 && number <= 1440 ? clockText(number) : showNumber(number, decimals));
  /** @type {[number, string][]} */
  const marks = Array.from({ length: Math.min(last - first + 1, 50) }, (_, n) => [(first + n) * step, mark((first + n) * step)]);
  return { label, low: closed ? first * step : low, high: closed ? last * step : high, marks };
}

/** @param {number} least @param {boolean} clock @returns {number} */
function stepOf(least, clock) {
  if (clock) return CLOCK_STEPS.find((step) => step >= least) || 480;
  const power = Number("1e" + powerOf(least));
  return (STEPS.find((step) => step * power >= least * (1 - 1e-9)) || 10) * power;
}

/** @param {number} number @returns {number} of ten */
function powerOf(number) {
  return Number(number.toExponential(16).split("e")[1]);
}

/** @param {string} words @param {string} unit @returns {string} */
function labelOf(words, unit) {
  return unit ? words + ", " + unit : words;
}

/** @param {string} tag @param {Record<string, string|number>} fields @param {string} [text] @returns {Element} */
function draw(tag, fields, text) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(fields)) made.setAttribute(name, typeof value === "number" ? value.toFixed(1) : value);
  if (text) made.textContent = text;
  return made;
}

/** @param {Axis} x @param {Axis} y @param {any[]} points @param {number[]} at @param {string} words @returns {Element} */
function drawing(x, y, points, at, words) {
  const left = 10 + LETTER * Math.max(...y.marks.map(([, text]) => text.length));
  const toX = (/** @type {number} */ number) => left + ((RIGHT - left) * (number - x.low)) / (x.high - x.low);
  const toY = (/** @type {number} */ number) => BOTTOM - ((BOTTOM - TOP) * (number - y.low)) / (y.high - y.low);
  const svg = draw("svg", { class: "nw-chart", role: "img", viewBox: "0 0 " + WIDTH + " " + HEIGHT, "aria-label": words });
  for (const [number, text] of y.marks) {
    svg.append(draw("path", { class: "tick", d: "M" + left.toFixed(1) + " " + toY(number).toFixed(1) + "H" + RIGHT.toFixed(1) }));
    svg.append(draw("text", { class: "mark", "text-anchor": "end", x: left - 5, y: toY(number) + 4 }, text));
  }
  for (const [number, text] of x.marks) {
    svg.append(draw("path", { class: "tick", d: "M" + toX(number).toFixed(1) + " " + BOTTOM.toFixed(1) + "v5" }));
    svg.append(draw("text", { class: "mark", "text-anchor": "middle", x: toX(number), y: BOTTOM + 17 }, text));
  }
  svg.append(draw("text", { class: "name", x: "0", y: "12" }, y.label), draw("text", { class: "name", "text-anchor": "end", x: RIGHT, y: HEIGHT - 6 }, x.label));
  svg.append(draw("path", { class: "edge", d: "M" + left.toFixed(1) + " " + TOP.toFixed(1) + "V" + BOTTOM.toFixed(1) + "H" + RIGHT.toFixed(1) }));
  let pen = "M";
  let curve = "";
  for (const [number, answer] of points) {
    if (answer !== null) curve += pen + toX(number).toFixed(1) + " " + toY(answer).toFixed(1);
    pen = answer === null ? "M" : "L";
  }
  const [atX, atY] = [toX(at[0]), toY(at[1])];
  svg.append(draw("path", { class: "curve", d: curve }));
  svg.append(draw("path", { class: "here", d: "M" + left.toFixed(1) + " " + atY.toFixed(1) + "H" + atX.toFixed(1) + "V" + BOTTOM.toFixed(1) }));
  svg.append(draw("circle", { class: "dot", cx: atX, cy: atY, r: "4" }));
  return svg;
}
