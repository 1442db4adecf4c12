/** Boxes for the numbers of a formula: read in the unit beside them, refused with the reason. */
import { fromSI, isOutside, readNumber, toSI } from "./calculate.js";
import { button, make } from "./dom.js";

/** @typedef {{symbol: string, shown: string, numerator: number, denominator: number, offset: number}} Unit */
/** @typedef {{value: any, wrong: string, unusual: string}} Answer */

/** @param {any} box @param {string} text @param {Unit} unit @returns {Answer} */
function judge(box, text, unit) {
  const number = readNumber(text);
  const wrong = (/** @type {string} */ what) => ({ value: NaN, wrong: box.label + ": " + what, unusual: "" });
  if (!text.trim()) return wrong("a number is missing");
  if (/,/.test(text)) return wrong("write the number with a point, such as " + text.replace(",", "."));
  if (Number.isNaN(number)) return wrong("this is no number");
  if (box.whole && !Number.isInteger(number)) return wrong("this is a count, write a whole number");
  const value = toSI(number, unit);
  if (isOutside(value, box.low, box.high)) return wrong("must be " + box.hard + (box.because ? ", because " + box.because : ""));
  const odd = isOutside(value, box.usual_low, box.usual_high);
  return { value, wrong: "", unusual: odd ? box.label + " is usually " + box.usual + ". Look again." : "" };
}

/**
 * @param {any} box @param {() => void} changed
 * @returns {{element: HTMLElement, read: () => Answer, reset: () => void}}
 */
export function boxFor(box, changed) {
  if (box.kind === "choice") return choiceBox(box, changed);
  if (box.kind === "rows") return rowsBox(box, changed);
  return quantityBox(box, changed);
}

function quantityBox(box, changed) {
  const entry = make("input", { class: "nw-box", inputmode: "decimal", autocomplete: "off", value: box.number, oninput: changed });
  const units = unitChoice(box, changed, entry);
  const element = make("div", { class: "nw-field" }, [
    make("label", {}, [make("span", {}, [box.label, ...symbolOf(box)]), entry]),
    ...(units ? [units.element] : []),
    ...(box.usual && box.usual_shown !== false ? [make("small", { text: "usually " + box.usual })] : []),
  ]);
  const unit = () => (units ? units.unit() : { numerator: 1, denominator: 1, offset: 0 });
  const read = () => {
    if (box.kind !== "sizes") return mark(entry, judge(box, entry.value, unit()));
    const all = entry.value.split(/[\s;]+/).filter(Boolean).map((one) => judge(box, one, unit()));
    const wrong = all.find((one) => one.wrong);
    return mark(entry, { value: all.map((one) => one.value), wrong: wrong ? wrong.wrong : all.length ? "" : box.label + ": a size is missing", unusual: "" });
  };
  const reset = () => {
    entry.value = box.number;
    if (units) units.reset();
  };
  return { element, read, reset };
}

/** @param {any} box @returns {Node[]} the symbol, what follows its low line set low */
function symbolOf(box) {
  if (!box.symbol) return [];
  const [name, low] = box.symbol.split(/_(.*)/);
  return [" ", make("i", { class: "nw-symbol" }, [name, ...(low ? [make("sub", { text: low })] : [])])];
}

function unitChoice(box, changed, entry) {
  if (!box.units.length) return null;
  let now = 0;
  if (box.units.length === 1) {
    return { element: make("span", { class: "nw-unit", text: box.units[0].shown }), unit: () => box.units[0], reset() {} };
  }
  const choice = make("select", { class: "nw-box nw-unit", "aria-label": "Unit of " + box.label, onchange: () => {
    const number = readNumber(entry.value);
    const wanted = Number(choice.value);
    if (!Number.isNaN(number)) entry.value = String(Number(fromSI(toSI(number, box.units[now]), box.units[wanted]).toPrecision(12)));
    now = wanted;
    changed();
  } }, box.units.map((unit, index) => make("option", { value: String(index), text: unit.shown })));
  return { element: choice, unit: () => box.units[now], reset() { now = 0; choice.value = "0"; } };
}

function choiceBox(box, changed) {
  const choice = make("select", { class: "nw-box", onchange: changed }, box.choices.map((one) => make("option", { value: one.name, text: one.title })));
  choice.value = box.number;
  const element = make("label", { class: "nw-field" }, [make("span", { text: box.label }), choice]);
  const read = () => ({ value: box.choices.find((one) => one.name === choice.value).constants, wrong: "", unusual: "" });
  return { element, read, reset: () => { choice.value = box.number; } };
}

function rowsBox(box, changed) {
  let rows = [];
  const list = make("div", { class: "nw-row-list" });
  const add = (/** @type {string[]} */ texts) => {
    const cells = box.columns.map((column, index) => boxFor({ ...column, number: texts[index] || "", usual_shown: false }, changed));
    const row = { cells, element: make("div", { class: "nw-row" }, cells.map((cell) => cell.element)) };
    const drop = button("Remove", () => {
      rows = rows.filter((one) => one !== row);
      row.element.remove();
      changed();
    });
    drop.setAttribute("aria-label", "Remove this row of " + box.label);
    row.element.append(drop);
    rows.push(row);
    list.append(row.element);
  };
  const more = button("Add a row", () => { add([]); changed(); });
  const reset = () => { rows = []; list.replaceChildren(); box.rows.forEach(add); };
  reset();
  const element = make("fieldset", { class: "nw-rows-box" }, [make("legend", { text: box.label }), list, more]);
  const read = () => {
    const answers = rows.map((row) => row.cells.map((cell) => cell.read()));
    const value = answers.map((cells) => Object.fromEntries(cells.map((cell, index) => [box.columns[index].name, cell.value])));
    return { value, wrong: (answers.flat().find((cell) => cell.wrong) || { wrong: "" }).wrong, unusual: (answers.flat().find((cell) => cell.unusual) || { unusual: "" }).unusual };
  };
  return { element, read, reset };
}

function mark(entry, answer) {
  if (answer.wrong) entry.setAttribute("aria-invalid", "true");
  else entry.removeAttribute("aria-invalid");
  return answer;
}
