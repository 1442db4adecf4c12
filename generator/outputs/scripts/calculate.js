/** The arithmetic of the calculators: the same operations on the same doubles as the Python side, in the same order. */

/** A value this near to a whole number is that number. */
const DUST = 1e-9;
/** Above a million the dust does not grow further. */
const MOST_DUST = 1e6;
/** A bound met to this part of itself is met. */
const EDGE = 1e-12;
const MOST_STEPS = 10000;
/** Far out, one more is the same double again. */
const FARTHEST = 1e9;
const MOST_DECIMALS = 12;

/** @typedef {{numerator: number, denominator: number, offset: number}} UnitFactor */

/** @param {number} number @param {UnitFactor} unit @returns {number} the value in SI */
export function toSI(number, unit) {
  const moved = unit.offset ? number + unit.offset : number;
  return (moved * unit.numerator) / unit.denominator;
}

/** @param {number} value in SI @param {UnitFactor} unit @returns {number} the number in the unit */
export function fromSI(value, unit) {
  const number = (value * unit.denominator) / unit.numerator;
  return unit.offset ? number - unit.offset : number;
}

/** @param {number} value @param {number|null} low @param {number|null} high @returns {boolean} outside the range */
export function isOutside(value, low, high) {
  if (!Number.isFinite(value)) return true;
  if (low !== null && value < low - EDGE * Math.abs(low)) return true;
  return high !== null && value > high + EDGE * Math.abs(high);
}

/**
 * @param {number} number @param {number} decimals @param {string} toward
 * @returns {number} more decimals where fewer than two figures were left: 0.04 A, where one decimal says 0.0 A;
 *   fewer where a decimal would say more than four figures: 3024 g, where one decimal says 3024.0 g
 */
export function tellingDecimals(number, decimals, toward) {
  let found = decimals;
  const size = Math.abs(number);
  if (toward !== "nearest") return found;
  while (found < MOST_DECIMALS && size > 0 && size < Number("1e" + (1 - found))) found += 1;
  while (found > 0 && size >= Number("1e" + (4 - found))) found -= 1;
  return found;
}

/** @param {number} number @param {number} decimals @param {string} toward nearest, up or down @returns {number} */
export function roundAnswer(number, decimals, toward) {
  const scale = Number("1e" + decimals);
  const moved = number * scale;
  const turn = toward === "up" ? words.wholeUp : toward === "down" ? words.wholeDown : wholeNearest;
  return turn(moved) / scale + 0;
}

/** @param {number} number rounded already @param {number} decimals @returns {string} with a true minus and thin groups */
export function showNumber(number, decimals) {
  if (!Number.isFinite(number)) return "";
  const size = Math.abs(number);
  const text = size < 1e9 && (size === 0 || size >= 1e-5) ? number.toFixed(decimals) : inPowersOfTen(number);
  const [whole, rest] = (Number(text) === 0 ? text.replace("-", "") : text).split(".");
  const figures = whole.replace("-", "");
  const grouped = figures.length > 4 ? figures.replace(/\B(?=([0-9]{3})+$)/g, "\u202f") : figures;
  return (whole.startsWith("-") ? "−" : "") + grouped + (rest === undefined ? "" : "." + rest);
}

/** @param {number} number @returns {string} */
function inPowersOfTen(number) {
  const [mantissa, power] = number.toExponential(11).split("e");
  const raised = String(Number(power)).replace("-", "⁻").replace(/[0-9]/g, (figure) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(figure)]);
  return mantissa.replace(/\.?0+$/, "") + "\u00a0×\u00a010" + raised;
}

/** @param {number} a @param {(x: number) => number} turn @param {number} dust @returns {number} */
function whole(a, turn, dust) {
  if (!Number.isFinite(a)) return a;
  const size = a >= 0 ? a : -a;
  const near = size >= 1 ? size : 1;
  return turn(a + dust * (near <= MOST_DUST ? near : MOST_DUST)) + 0;
}

/** @param {number} a @returns {number} halves go away from zero */
function wholeNearest(a) {
  return words.nearest(a, 1);
}

/** @param {number} low @param {number} high @returns {boolean} whether nobody can count from low to high */
function isTooFar(low, high) {
  return !(Math.abs(low) <= FARTHEST && Math.abs(high) <= FARTHEST) || high - low >= MOST_STEPS;
}

/** The words of the formula language that JavaScript lacks; a formula takes them as its second argument. */
export const words = Object.freeze({
  /** @param {number} a @param {number} exponent @returns {number} by repeated multiplication */
  power(a, exponent) {
    let result = a;
    for (let i = 1; i < exponent; i = i + 1) result = result * a;
    return result;
  },
  /** @param {number} a @param {number} b @returns {number} */
  larger: (a, b) => (a >= b ? a : b),
  /** @param {number} a @param {number} b @returns {number} */
  smaller: (a, b) => (a <= b ? a : b),
  /** @param {number} a @returns {number} */
  wholeUp: (a) => whole(a, Math.ceil, -DUST),
  /** @param {number} a @returns {number} */
  wholeDown: (a) => whole(a, Math.floor, DUST),
  /** @param {number} a @param {number} step @returns {number} */
  nearest(a, step) {
    const count = a / step;
    if (!Number.isFinite(count)) return count;
    const size = count < 0 ? -count : count;
    const low = Math.floor(size);
    const near = size - low >= 0.5 ? low + 1 : low;
    return (count < 0 ? -near : near) * step;
  },
  /** @param {object[]} rows @param {(row: any) => number} body @returns {number} */
  total(rows, body) {
    let result = 0;
    for (const row of rows) result = result + body(row);
    return result;
  },
  /** @param {number} low @param {number} high @param {(i: number) => number} body @returns {number} */
  product(low, high, body) {
    if (isTooFar(low, high)) return 1 * body(NaN);
    let result = 1;
    for (let i = low; i <= high; i = i + 1) result = result * body(i);
    return result;
  },
  /** @param {number} low @param {number} high @param {(i: number) => boolean} condition @returns {number} */
  smallest(low, high, condition) {
    if (isTooFar(low, high)) return NaN;
    for (let i = low; i <= high; i = i + 1) if (condition(i)) return i;
    return NaN;
  },
  /** @param {number} value @param {number[]} sizes @returns {number} */
  nextSizeUp(value, sizes) {
    const floor = value - 1e-9 * (value >= 0 ? value : -value);
    let found = NaN;
    for (const stock of sizes) if (stock >= floor && !(stock >= found)) found = stock;
    return found;
  },
});
