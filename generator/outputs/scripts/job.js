/** The numbers of a student's own part, kept on this device; everything that depends on them follows. */
import { boxFor } from "./boxes.js";
import { fromSI, isOutside, toSI } from "./calculate.js";
import { all, button, make, pageData } from "./dom.js";
import { keep, recall } from "./store.js";
import { shownIn, workOut } from "./sums.js";

/** A screen reader is told once the typing has stopped for so long, in ms. */
const PAUSE = 700;

/** @param {string} procedure Adds the boxes to their place. */
export function startJob(procedure) {
  const place = document.querySelector("[data-nw-job]");
  const data = pageData("my_part_data");
  if (!place || !data) return;
  const key = "job." + procedure;
  const said = make("p", { class: "nw-wrong" });
  const told = make("p", { class: "nw-hidden", role: "status" });
  const own = make("p", { class: "nw-own", hidden: true, text: "Your own numbers, kept on this device. Cards, run sheet and the drawing of the run keep the class part." });
  const speak = afterQuiet((/** @type {string} */ words) => { told.textContent = words; });
  let first = {};
  const changed = () => {
    const texts = Object.fromEntries([...boxes].map(([name, box]) => [name, box.text()]));
    const moved = Object.keys(texts).filter((name) => texts[name] !== first[name]);
    keep(key, moved.length ? Object.fromEntries(moved.map((name) => [name, texts[name]])) : null);
    own.hidden = !moved.length;
    const words = follow(data, boxes);
    said.textContent = words.wrong;
    speak(words.wrong || words.answers);
  };
  const boxes = new Map(data.boxes.map((/** @type {any} */ box) => [box.name, boxFor(box, () => changed())]));
  const reset = button("Back to the class part", () => {
    boxes.forEach((box) => box.reset());
    changed();
  });
  first = Object.fromEntries([...boxes].map(([name, box]) => [name, box.text()]));
  place.replaceChildren(make("div", { class: "nw-fields" }, [...boxes.values()].map((box) => box.element)), said, own, reset, told);
  const kept = recall(key);
  if (!kept || typeof kept !== "object") return;
  for (const [name, text] of Object.entries(kept)) if (boxes.has(name) && typeof text === "string") boxes.get(name).set(text);
  changed();
}

/** @param {(words: string) => void} act @returns {(words: string) => void} */
function afterQuiet(act) {
  let waiting = 0;
  return (words) => {
    clearTimeout(waiting);
    waiting = setTimeout(() => act(words), PAUSE);
  };
}

/** Works every sum out again and shows it wherever it stands; what is wrong, and the answers, in words. */
function follow(data, boxes) {
  const values = {};
  const wrong = [];
  for (const [name, box] of boxes) {
    const answer = box.read();
    values[name] = answer.wrong ? undefined : answer.value;
    if (answer.wrong) wrong.push(answer.wrong);
    write("job." + name, answer.wrong ? "no answer" : box.said ? box.said() : box.text());
  }
  const known = {};
  const answers = [];
  for (const sum of data.sums) {
    try {
      const found = sumOf(sum, values, known);
      known[sum.key] = found.value;
      answers.push(sum.title + ": " + found.shown + ".");
      write(sum.key, found.shown);
    } catch (error) {
      if (error.message) wrong.push(sum.title + ": " + error.message + ".");
      write(sum.key, "no answer");
    }
  }
  for (const timer of all("[data-nw-timer][data-sum]")) timer.dataset.seconds = String(known[timer.dataset.sum || ""] || 0);
  document.dispatchEvent(new CustomEvent("newel:sums", { detail: known }));
  return { wrong: wrong.join(" "), answers: answers.join(" ") };
}

/** @param {string} key @param {string} text */
function write(key, text) {
  for (const element of all("[data-nw-sum]")) if (element.dataset.nwSum === key) element.textContent = text;
}

/** @returns {{value: number, shown: string}} throws with the reason, or with none where an earlier value lacks */
function sumOf(sum, values, known) {
  const counted = workOut(sum.formula, givenTo(sum, values, known), sum.requires);
  const value = sum.gives ? toSI(counted, sum.gives) : counted;
  const number = fromSI(value, sum.unit);
  const isWhole = sum.whole_from > 0 && number >= sum.whole_from;
  const shown = shownIn(value, sum.unit, isWhole ? 0 : sum.decimals, isWhole ? "nearest" : sum.toward);
  const broken = sum.fences.find((/** @type {any} */ fence) => isOutside(value, fence.low, fence.high));
  if (broken) throw new Error(shown + " comes out, and " + broken.says);
  return { value, shown };
}

function givenTo(sum, values, known) {
  return Object.fromEntries(sum.sources.map(([name, source]) => {
    const [from, key] = source.split(/:(.*)/);
    if (!from) return [name, sum.constants[name]];
    const value = from === "box" ? values[key] : known[key];
    if (value === undefined) throw new Error("");
    return [name, inItsUnit(value, name, sum.takes)];
  }));
}

/** A lab's own formula counts in units of its own; everything else in SI. */
function inItsUnit(value, name, takes) {
  if (Array.isArray(value)) return value.map((row) => (typeof row === "object" ? Object.fromEntries(Object.entries(row).map(([column, cell]) => [column, inItsUnit(cell, name + "." + column, takes)])) : row));
  return takes[name] ? fromSI(value, takes[name]) : value;
}
