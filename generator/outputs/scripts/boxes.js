/** Boxes for the numbers of a formula: read in the unit beside them, refused with the reason. */
import { fromSI, toSI } from "./calculate.js";
import { button, make } from "./dom.js";
import { keep, recall } from "./store.js";
import { clockText } from "./sums.js";
import { judge, readNumber, unitNamed } from "./typed.js";

/**
 * One box. `text` is what stands in it as it is typed into a link or a command: "22 um"; `set` takes the same.
 * `show` puts a value in SI into it. `unit` is the one beside it; `remember` turns to the one chosen last time.
 * `said` is what stands in it as a reader is shown it.
 * @typedef {{element: HTMLElement, read: () => import("./typed.js").Answer, reset: () => void, text: () => string,
 *   set: (text: string) => void, show?: (value: number) => void, said?: () => string, remember?: () => void, unit?: () => import("./typed.js").Unit}} Box
 */

let boxes = 0;

/** @param {any} box @param {() => void} changed @returns {Box} */
export function boxFor(box, changed) {
  if (box.kind === "choice") return choiceBox(box, changed);
  if (box.kind === "rows") return rowsBox(box, changed);
  return box.kind === "sizes" ? sizesBox(box, changed) : quantityBox(box, changed);
}

/** @param {any} box @param {() => void} changed @returns {Box} */
function quantityBox(box, changed) {
  const { entry, note, field } = entryFor(box, changed);
  const units = unitChoice(box, entry, changed);
  const usual = box.usual && !box.in_row ? "usually " + box.usual : "";
  const hint = make("small", { text: usual });
  const element = field([...(units.element ? [units.element] : []), ...(usual ? [hint] : [])]);
  entry.addEventListener("change", () => {
    const answer = judge(box, entry.value, units.now());
    if (answer.unit && answer.unit !== units.now() && answer.unit.symbol) units.take(answer.unit);
    if (!answer.wrong && !box.clock && Number.isNaN(readNumber(entry.value))) entry.value = numberText(answer.number);
    changed();
  });
  const read = () => mark(entry, note, judge(box, entry.value, units.now()));
  const set = (/** @type {string} */ text) => {
    const answer = judge(box, text, units.now());
    if (answer.unit && answer.unit.symbol) units.take(answer.unit);
    entry.value = answer.number === undefined || box.clock ? text : numberText(answer.number);
  };
  const show = (/** @type {number} */ value) => {
    const number = Number(fromSI(value, units.now()).toPrecision(12));
    entry.value = box.clock && number >= 0 && number <= 1440 ? clockText(number) : numberText(number);
  };
  // What was typed with a unit of its own is left as it was typed.
  const unitTo = (/** @type {string} */ unit) => (unit && !Number.isNaN(readNumber(entry.value)) ? unit : "");
  const text = () => (entry.value + " " + unitTo(units.now().symbol)).trim();
  const said = () => (entry.value + "\u00a0" + unitTo(units.now().shown)).trim();
  const reset = () => { entry.value = box.number; units.take(units.all[0]); units.remember(); };
  units.remember();
  return { element, read, reset, text, set, show, said, remember: units.remember, unit: units.now };
}

/** @param {number|undefined} number @returns {string} */
function numberText(number) {
  return number === undefined ? "" : String(number);
}

/** The label, the entry and the place for what is wrong with it. */
function entryFor(box, changed) {
  boxes += 1;
  const note = make("p", { class: "nw-box-note", id: "nw_note_" + boxes });
  const entry = /** @type {HTMLInputElement} */ (make("input", {
    class: "nw-box", inputmode: box.clock ? "text" : "decimal", autocomplete: "off", "aria-describedby": note.id, oninput: changed, value: box.number,
  }));
  const field = (/** @type {Node[]} */ more) => make("div", { class: "nw-field" }, [
    make("label", {}, [make("span", {}, [box.label, ...symbolOf(box)]), entry]), ...more, note,
  ]);
  return { entry, note, field };
}

/** @param {any} box @returns {Node[]} the symbol, what follows its low line set low */
function symbolOf(box) {
  if (!box.symbol || box.symbol === box.name) return [];
  const [name, low] = box.symbol.split(/_(.*)/);
  return [" ", make("i", { class: "nw-symbol" }, [name, ...(low ? [make("sub", { text: low })] : [])])];
}

/** The choice of a unit, remembered for this input wherever it stands. */
function unitChoice(box, entry, changed) {
  const units = box.clock || !box.units.length ? [{ symbol: "", shown: "", numerator: box.clock ? 60 : 1, denominator: 1, offset: 0, spellings: [] }] : box.units;
  let now = units[0];
  const take = (/** @type {any} */ unit) => { now = unit; if (choice) choice.value = unit.symbol; };
  const turn = (/** @type {any} */ wanted) => {
    const number = readNumber(entry.value);
    if (!Number.isNaN(number)) entry.value = numberText(Number(fromSI(toSI(number, now), wanted).toPrecision(12)));
    take(wanted);
  };
  const chosen = () => {
    turn(units.find((/** @type {any} */ unit) => unit.symbol === choice.value) || now);
    keep("unit." + box.name, now.symbol);
    changed();
  };
  const choice = units.length < 2 ? null : /** @type {HTMLSelectElement} */ (make("select", { class: "nw-box nw-unit", "aria-label": "Unit of " + box.label, onchange: chosen },
    units.map((/** @type {any} */ unit) => make("option", { value: unit.symbol, text: unit.shown }))));
  const fixed = units[0].shown ? make("span", { class: "nw-unit", text: units[0].shown }) : null;
  const remember = () => {
    const unit = choice && unitNamed(String(recall("unit." + box.name) || ""), units);
    if (unit) turn(unit);
  };
  return { element: choice || fixed, all: units, now: () => now, take, remember };
}

/** @param {any} box @param {() => void} changed @returns {Box} */
function sizesBox(box, changed) {
  const { entry, note, field } = entryFor(box, changed);
  const unit = box.units[0];
  const element = field(unit ? [make("span", { class: "nw-unit", text: unit.shown }), make("small", { text: "sizes with a space between them" })] : []);
  const read = () => {
    const found = entry.value.split(/[\s;]+|,\s+/).filter(Boolean).map((one) => judge(box, one, unit));
    const wrong = found.find((one) => one.wrong);
    return mark(entry, note, { value: found.map((one) => one.value), wrong: wrong ? wrong.wrong : found.length ? "" : box.label + ": a size is missing.", unusual: "" });
  };
  const text = () => entry.value.trim().split(/[\s;]+|,\s+/).map((one) => one + (unit ? " " + unit.symbol : "")).join(", ");
  const set = (/** @type {string} */ given) => {
    entry.value = given.split(",").map((one) => judge(box, one, unit)).map((one) => (one.unit ? fromSI(one.value, unit || one.unit) : "")).join(" ");
  };
  return { element, read, reset: () => { entry.value = box.number; }, text, set };
}

/** @param {any} box @param {() => void} changed @returns {Box} */
function choiceBox(box, changed) {
  const choice = /** @type {HTMLSelectElement} */ (make("select", { class: "nw-box", onchange: changed },
    box.choices.map((/** @type {any} */ one) => make("option", { value: one.name, text: one.title }))));
  const set = (/** @type {string} */ name) => { if (box.choices.some((/** @type {any} */ one) => one.name === name)) choice.value = name; };
  set(box.number);
  const element = make("label", { class: "nw-field" }, [make("span", { text: box.label }), choice]);
  const read = () => ({ value: box.choices.find((/** @type {any} */ one) => one.name === choice.value).constants, wrong: "", unusual: "" });
  return { element, read, reset: () => set(box.number), text: () => choice.value, set };
}

/** @param {any} box @param {() => void} changed @returns {Box} */
function rowsBox(box, changed) {
  /** @type {{cells: Box[], element: HTMLElement}[]} */
  let rows = [];
  const list = make("div", { class: "nw-row-list" });
  const add = (/** @type {string[]} */ texts) => {
    const cells = box.columns.map((/** @type {any} */ column) => boxFor({ ...column, number: "", in_row: true }, changed));
    cells.forEach((/** @type {Box} */ cell, /** @type {number} */ at) => cell.set(withUnit(box.columns[at], texts[at] || "")));
    cells.forEach((/** @type {Box} */ cell) => cell.remember && cell.remember());
    const row = { cells, element: make("div", { class: "nw-row" }, cells.map((/** @type {Box} */ cell) => cell.element)) };
    const drop = button("Remove", () => {
      rows = rows.filter((one) => one !== row);
      row.element.remove();
      more.focus();
      changed();
    });
    drop.setAttribute("aria-label", "Remove this row of: " + box.label);
    row.element.append(drop);
    rows.push(row);
    list.append(row.element);
  };
  const more = button("Add a row", () => {
    add([]);
    const entry = rows[rows.length - 1].element.querySelector("input");
    if (entry) entry.focus();
    changed();
  });
  const fill = (/** @type {string[][]} */ texts) => { rows = []; list.replaceChildren(); texts.forEach(add); };
  const element = make("fieldset", { class: "nw-rows-box" }, [make("legend", { text: box.label }), list, more]);
  const read = () => {
    const answers = rows.map((row) => row.cells.map((cell) => cell.read()));
    const value = answers.map((cells) => Object.fromEntries(cells.map((cell, at) => [box.columns[at].name, cell.value])));
    const first = (/** @type {"wrong"|"unusual"} */ part) => (answers.flat().find((cell) => cell[part]) || { wrong: "", unusual: "" })[part];
    return { value, wrong: first("wrong"), unusual: first("unusual") };
  };
  const text = () => rows.map((row) => row.cells.map((cell) => cell.text()).join(" x ")).join(", ");
  const set = (/** @type {string} */ given) => fill(given.trim() ? given.split(",").map((row) => row.split(/\s[x×]\s/).map((cell) => cell.trim())) : []);
  fill(box.rows);
  return { element, read, reset: () => fill(box.rows), text, set };
}

/** @param {any} column @param {string} text @returns {string} a bare number of a row is in the column's first unit */
function withUnit(column, text) {
  const unit = column.units[0];
  return text && unit && !Number.isNaN(readNumber(text)) ? text + " " + unit.symbol : text;
}

/** @param {HTMLElement} entry @param {HTMLElement} note @param {import("./typed.js").Answer} answer */
function mark(entry, note, answer) {
  if (answer.wrong) entry.setAttribute("aria-invalid", "true");
  else entry.removeAttribute("aria-invalid");
  const said = answer.wrong || answer.unusual;
  if (note.textContent !== said) note.textContent = said;
  return answer;
}
