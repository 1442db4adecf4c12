/** The numbers of a student's own part; everything that depends on them follows. */
import { all, button, make, pageData } from "./dom.js";
import { boxFor } from "./boxes.js";
import { shownIn, workOut } from "./sums.js";

/** Adds the boxes to their place. */
export function startJob() {
  const place = document.querySelector("[data-nw-job]");
  const data = pageData("my_part_data");
  if (!place || !data) return;
  const said = make("p", { class: "nw-wrong", role: "alert" });
  const changed = () => {
    const values = {};
    const wrong = [];
    for (const [name, box] of boxes) {
      const answer = box.read();
      values[name] = answer.value;
      if (answer.wrong) wrong.push(answer.wrong);
    }
    said.textContent = wrong.join(" ");
    follow(data.sums, wrong.length ? null : values, said);
  };
  const boxes = new Map(data.boxes.map((/** @type {any} */ box) => [box.name, boxFor(box, changed)]));
  const reset = button("Back to the class part", () => {
    boxes.forEach((box) => box.reset());
    changed();
  });
  place.append(make("div", { class: "nw-fields" }, [...boxes.values()].map((box) => box.element)), said, reset);
}

/** @param {any[]} sums inner ones first @param {Record<string, any>|null} values @param {HTMLElement} said */
function follow(sums, values, said) {
  const known = {};
  for (const sum of sums) {
    let shown = "no answer";
    try {
      if (values) {
        known[sum.key] = workOut(sum.formula, givenTo(sum, values, known), sum.requires);
        shown = shownIn(known[sum.key], sum.unit, sum.decimals, sum.toward);
      }
    } catch (error) {
      said.textContent = sum.title + ": " + error.message;
    }
    for (const element of all("[data-nw-sum]")) if (element.dataset.nwSum === sum.key) element.textContent = shown;
  }
  for (const timer of all("[data-nw-timer][data-sum]")) timer.dataset.seconds = known[timer.dataset.sum] || 0;
  document.dispatchEvent(new CustomEvent("newel:sums", { detail: known }));
}

function givenTo(sum, values, known) {
  return Object.fromEntries(sum.sources.map(([name, source]) => {
    const [from, key] = source.split(/:(.*)/);
    if (from === "box") return [name, values[key]];
    if (from === "sum" && !(key in known)) throw new Error("an earlier sum has no answer");
    return [name, from === "sum" ? known[key] : sum.constants[name]];
  }));
}
