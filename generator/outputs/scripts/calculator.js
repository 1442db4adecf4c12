/** The page of one formula: boxes, the answer beside them, and what is wrong or unusual, in words. */
import { all, button, make, pageData } from "./dom.js";
import { boxFor } from "./boxes.js";
import { shownIn, workOut } from "./sums.js";

/** Adds the form to its place. */
export function startCalculators() {
  for (const place of all("[data-nw-calculator]")) {
    const data = pageData(place.dataset.nwCalculator);
    const answer = make("output", { class: "nw-result" });
    const notes = make("p", { class: "nw-wrong", role: "status" });
    const unit = make("select", { class: "nw-box", onchange: () => changed() }, data.units.map((/** @type {any} */ one, /** @type {number} */ index) => make("option", { value: String(index), text: one.shown || "plain number" })));
    const changed = () => {
      const answers = boxes.map((box) => box.read());
      const wrong = answers.map((one) => one.wrong).filter(Boolean);
      notes.textContent = [...wrong, ...answers.map((one) => one.unusual).filter(Boolean)].join(" ");
      answer.textContent = "no answer";
      if (wrong.length) return;
      try {
        const values = Object.fromEntries(answers.map((one, index) => [data.boxes[index].name, one.value]));
        const chosen = Number(unit.value) || 0;
        answer.textContent = shownIn(workOut(data.name, values, data.requires), data.units[chosen], data.decimals[chosen], data.toward);
      } catch (error) {
        notes.textContent = error.message;
      }
    };
    const boxes = data.boxes.map((/** @type {any} */ box) => boxFor(box, changed));
    const reset = button("Back to the first numbers", () => {
      boxes.forEach((/** @type {any} */ box) => box.reset());
      changed();
    });
    const inUnit = data.units.length > 1 ? [make("label", { class: "nw-field" }, [make("span", { text: "Answer in" }), unit])] : [];
    place.replaceChildren(
      make("div", { class: "nw-fields" }, boxes.map((/** @type {any} */ box) => box.element)),
      make("div", { class: "nw-answer" }, [make("p", { class: "nw-answer-label", text: data.answer_label }), answer, ...inUnit]),
      notes, reset,
    );
    changed();
  }
}
