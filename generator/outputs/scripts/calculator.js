/** The page of one formula: boxes, the answer or any other input worked out, and what a wrong number does. */
import { boxFor } from "./boxes.js";
import { fromSI, isOutside, showNumber } from "./calculate.js";
import { asHash, asText, copy, fromHash } from "./carry.js";
import { chartOf } from "./chart.js";
import { all, button, make, pageData } from "./dom.js";
import { effectSentences, naiveSentence } from "./effects.js";
import { keep, recall } from "./store.js";
import { whenWoken } from "./start.js";
import { shownIn, solveFor, workOut } from "./sums.js";

const ANSWER = "answer";
/** A screen reader is told once the typing has stopped for so long, in ms. */
const QUIET = 700;

/** Adds the form to its place. */
function startCalculators() {
  for (const place of all("[data-nw-calculator]")) startCalculator(place, pageData(place.dataset.nwCalculator || ""));
}

/** @param {HTMLElement} place @param {any} data */
function startCalculator(place, data) {
  const answerBox = { name: ANSWER, label: data.answer_label, symbol: data.answer_symbol, kind: "quantity", number: "", units: data.units, clock: data.clock,
    low: null, high: null, usual_low: null, usual_high: null, never: data.never, never_shown: data.never_shown };
  const parts = formPieces(data, () => changed());
  const boxes = new Map([...data.boxes, answerBox].map((box) => [box.name, boxFor(box, () => changed())]));
  const fields = make("div", { class: "nw-fields" }, [...boxes.values()].map((box) => box.element));
  const state = { data, parts, boxes, answerBox, shown: "", drawing: 0 };
  const changed = () => show(state);
  const reset = () => {
    boxes.forEach((box) => box.reset());
    parts.wanted.value = ANSWER;
    changed();
  };
  place.replaceChildren(
    ...(data.solve.length ? [make("div", { class: "nw-fields nw-wanted" }, [make("label", { class: "nw-field" }, [make("span", { text: "Work out" }), parts.wanted])])] : []),
    fields, parts.answer, parts.notes,
    make("div", { class: "nw-doings" }, [
      button("Copy the answer", () => copy(copied(state), parts.carried, parts.say)),
      button("Copy a link with these numbers", () => copyLink(state)),
      button("Back to the first numbers", reset),
    ]), parts.carried, parts.told,
  );
  const alongPlace = document.querySelector("[data-nw-along]");
  if (alongPlace && parts.along.options.length > 1) alongPlace.replaceChildren(make("label", { class: "nw-field" }, [make("span", { text: "Against" }), parts.along]));
  addEventListener("hashchange", () => takeHash(state));
  takeHash(state);
}

/** The pieces of the form beside its boxes. */
function formPieces(data, changed) {
  const choices = [[ANSWER, data.answer_label], ...data.boxes.filter((/** @type {any} */ box) => data.solve.includes(box.name)).map((/** @type {any} */ box) => [box.name, box.label])];
  const option = ([value, text]) => make("option", { value, text });
  const wanted = /** @type {HTMLSelectElement} */ (make("select", { class: "nw-box", onchange: changed }, choices.map(option)));
  const lines = data.boxes.filter((/** @type {any} */ box) => box.kind === "quantity").map((/** @type {any} */ box) => [box.name, box.label]);
  const along = /** @type {HTMLSelectElement} */ (make("select", { class: "nw-box", onchange: changed }, lines.map(option)));
  along.value = data.along;
  const unit = /** @type {HTMLSelectElement} */ (make("select", { class: "nw-box", onchange: () => {
    keep("unit.answer." + data.name, unit.value === data.units[0].symbol ? null : unit.value);
    changed();
  } }, data.units.map((/** @type {any} */ one) => option([one.symbol, one.shown || "plain number"]))));
  const kept = recall("unit.answer." + data.name);
  if (data.units.some((/** @type {any} */ one) => one.symbol === kept)) unit.value = kept;
  const unitField = make("label", { class: "nw-field", hidden: data.units.length < 2 || data.clock }, [make("span", { text: "Answer in" }), unit]);
  const label = make("p", { class: "nw-answer-label" });
  const result = make("p", { class: "nw-result" });
  const told = make("p", { class: "nw-hidden", role: "status" });
  let waiting = 0;
  const say = (/** @type {string} */ words) => {
    clearTimeout(waiting);
    waiting = setTimeout(() => { told.textContent = words; }, QUIET);
  };
  return { wanted, along, unit, unitField, label, result, told, say, notes: make("p", { class: "nw-wrong" }), carried: make("div", { class: "nw-carried" }),
    answer: make("div", { class: "nw-answer" }, [label, result, unitField]) };
}

/** Reads every box, works the wanted one out and shows what follows from it. */
function show(state) {
  const { data, parts, boxes } = state;
  const wanted = parts.wanted.value || ANSWER;
  boxes.forEach((box, name) => { box.element.hidden = name === wanted; });
  parts.unitField.hidden = wanted !== ANSWER || data.units.length < 2 || data.clock;
  parts.label.textContent = wanted === ANSWER ? data.answer_label : data.boxes.find((box) => box.name === wanted).label;
  const readings = Object.fromEntries([...boxes].filter(([name]) => name !== wanted).map(([name, box]) => [name, box.read()]));
  const wrong = Object.values(readings).map((one) => one.wrong).filter(Boolean);
  const unusual = Object.values(readings).map((one) => one.unusual).filter(Boolean);
  try {
    if (wrong.length) throw new Error(wrong.join(" "));
    const found = workedOut(state, wanted, readings);
    parts.notes.textContent = unusual.join(" ");
    parts.result.textContent = state.shown = found.shown;
    parts.result.dataset.value = String(found.number);
    parts.say(parts.label.textContent + ": " + found.shown + ". " + unusual.join(" "));
    showSoon(state, found);
  } catch (error) {
    parts.notes.textContent = sentence(error.message);
    parts.result.textContent = state.shown = "no answer";
    delete parts.result.dataset.value;
    parts.say("No answer. " + sentence(error.message));
    showSoon(state, null);
  }
}

/** Draws once for all that was typed since the screen was last drawn. */
function showSoon(state, found) {
  cancelAnimationFrame(state.drawing);
  state.drawing = requestAnimationFrame(() => showWhatFollows(state, found));
}

/** @param {string} words @returns {string} */
function sentence(words) {
  const text = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?]$/.test(text) ? text : text + ".";
}

/** All values and the answer in SI, and the wanted one as it is shown; throws where there is none. */
function workedOut(state, wanted, readings) {
  const { data, parts, boxes } = state;
  const { [ANSWER]: target, ...given } = readings;
  const values = Object.fromEntries(Object.entries(given).map(([name, one]) => [name, one.value]));
  const unit = data.units.find((one) => one.symbol === parts.unit.value) || data.units[0];
  const show = (value) => shownIn(value, unit, data.decimals[data.units.indexOf(unit)], data.toward, data.clock);
  const numbers = Object.fromEntries(Object.entries(given).map(([name, one]) => [name, { number: one.number, unit: one.unit }]));
  if (wanted === ANSWER) {
    const right = workOut(data.name, values, data.requires);
    if (isOutside(right, null, data.never)) throw new Error(data.answer_label + " comes out as " + show(right) + ": never above " + data.never_shown + " in this lab");
    return { data, values, numbers, right, show, unit, number: fromSI(right, unit), shown: show(right) };
  }
  const box = data.boxes.find((one) => one.name === wanted);
  const value = solveFor(data.name, wanted, { ...values, [ANSWER]: target.value }, data.requires);
  const own = boxes.get(wanted).unit();
  const number = fromSI(value, own);
  const shown = fourFigures(number) + (own.shown ? "\u00a0" + own.shown : "");
  if (isOutside(value, box.low, box.high)) throw new Error(box.label + " comes out as " + shown + ", and must be " + box.hard + (box.because ? ", because " + box.because : ""));
  if (isOutside(value, null, box.never)) throw new Error(box.label + " comes out as " + shown + ": never above " + box.never_shown + " in this lab");
  boxes.get(wanted).show(value);
  numbers[wanted] = { number, unit: own };
  return { data, values: { ...values, [wanted]: value }, numbers, right: target.value, show, unit, number, shown: box.clock ? boxes.get(wanted).text() : shown };
}

/** @param {number} number @returns {string} */
function fourFigures(number) {
  const rounded = Number(number.toPrecision(4));
  const size = Math.abs(rounded);
  return showNumber(rounded, size >= 1000 || !size ? 0 : size < 1e-5 ? 0 : Math.min(12, (String(rounded).split(".")[1] || "").length));
}

/** Sentences and chart; what hangs on no answer is not shown. */
function showWhatFollows(state, found) {
  const naive = document.querySelector("[data-nw-naive]");
  if (naive) naive.textContent = found ? naiveSentence(found) : "";
  const effects = document.querySelector("[data-nw-effects]");
  if (effects) effects.replaceChildren(...(found ? effectSentences(found) : []).map((text) => make("li", { text })));
  const chart = document.querySelector("[data-nw-chart]");
  const along = state.data.boxes.find((box) => box.name === state.parts.along.value);
  if (!chart || !along) return;
  const drawn = found && chartOf(found, along, found.unit);
  chart.replaceChildren(...(drawn ? [drawn] : []));
}

/** @returns {Record<string, string>} by name, as typed */
function textsOf(state) {
  const wanted = state.parts.wanted.value || ANSWER;
  return Object.fromEntries([...state.boxes].filter(([name]) => name !== wanted).filter(([name]) => name !== ANSWER || wanted !== ANSWER).map(([name, box]) => [name, box.text()]));
}

function copied(state) {
  const labels = Object.fromEntries([...state.data.boxes, state.answerBox].map((box) => [box.name, box.label]));
  const lines = Object.entries(textsOf(state)).map(([name, text]) => ({ label: labels[name], name, text }));
  return asText(state.data, lines, state.parts.label.textContent, state.shown);
}

function copyLink(state) {
  const wanted = state.parts.wanted.value || ANSWER;
  const unit = state.parts.unit.value === state.data.units[0].symbol ? {} : { in: state.parts.unit.value };
  history.replaceState(null, "", "#" + asHash({ ...textsOf(state), ...(wanted === ANSWER ? unit : { solve: wanted }) }));
  copy(location.href, state.parts.carried, state.parts.say);
}

/** Takes the numbers that the address holds; one that cannot be is refused in its box. */
function takeHash(state) {
  const { solve, in: unit, ...texts } = fromHash();
  if (state.data.units.some((one) => one.symbol === unit)) state.parts.unit.value = unit;
  if (solve && state.data.solve.includes(solve)) state.parts.wanted.value = solve;
  for (const [name, text] of Object.entries(texts)) if (state.boxes.has(name)) state.boxes.get(name).set(text);
  show(state);
}

whenWoken(startCalculators);
