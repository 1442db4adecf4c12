/** The learning path: questions asked of oneself, a rehearsal, a completion slip, and what changed since then. */
import { all, button, make, pageData } from "./dom.js";
import { notice } from "./notices.js";
import { rehearsal } from "./pace.js";
import { printAlone } from "./record.js";
import { keep, recall, recallRehearsed } from "./store.js";

/** How many times as fast as the wall clock a rehearsal runs. */
const FAST = 50;

/** @typedef {{issue: number, code: string, needs: string[], changes: [number, string, string][]}} Training */

/** @param {string} procedure */
export function startLearning(procedure) {
  const place = document.querySelector("[data-nw-rehearse]");
  const data = /** @type {Training|null} */ (pageData("training_data"));
  if (!place || !data) return;
  const key = "learnt." + procedure;
  const kept = recall(key);
  const learnt = { known: {}, seen: {}, trained: 0, ...(kept && typeof kept === "object" ? kept : {}) };
  const said = make("p", { role: "status" });
  const slip = button("Print completion slip", () => {
    learnt.trained = data.issue;
    save();
    printAlone(slipOf(data));
  }, "nw-main");
  const show = () => {
    const lacking = lackingOf(data, learnt, procedure);
    slip.disabled = lacking.length > 0;
    said.textContent = lacking.length ? "Before the slip: " + lacking.join("; ") + "." : "All of it done, on this device.";
  };
  const save = () => { keep(key, learnt); show(); };
  for (const item of all("[data-nw-question]")) knowing(item, item.dataset.nwQuestion || "", learnt.known, save);
  place.append(
    make("p", {}, [make("a", { class: "nw-button", href: rehearsal ? location.pathname : "?rehearsal=" + FAST, text: rehearsal ? "Leave the rehearsal" : "Rehearse, " + FAST + " times as fast" })]),
    said, slip,
  );
  show();
  showChanges(data, learnt, save);
}

/** Two buttons under an answer, and whether it was known. */
function knowing(item, id, known, save) {
  const said = make("span", { class: "nw-small", role: "status" });
  const show = () => { said.textContent = known[id] ? " Known." : ""; };
  const answer = (/** @type {boolean} */ is) => () => {
    known[id] = is;
    show();
    save();
  };
  item.querySelector("details").append(make("p", { class: "nw-tool" }, [button("I knew it", answer(true)), " ", button("Ask me again", answer(false)), said]));
  show();
}

/** @returns {string[]} what must be done before the slip is printed */
function lackingOf(data, learnt, procedure) {
  const questions = all("[data-nw-question]");
  const open = questions.filter((item) => !learnt.known[item.dataset.nwQuestion || ""]).length;
  const left = all("[data-nw-step]").length - rehearsedSteps(procedure);
  return [
    data.issue ? "" : "the procedure must be posted, this is a draft",
    open ? open + " of " + questions.length + " questions to answer" : "",
    left > 0 ? left + " steps to rehearse" : "",
  ].filter(Boolean);
}

/** @param {string} procedure @returns {number} steps of this page that are ticked in its rehearsal */
function rehearsedSteps(procedure) {
  const run = recallRehearsed("run." + procedure);
  const done = run && typeof run === "object" && run.done ? run.done : {};
  return all("[data-nw-step]").filter((step) => (step.dataset.nwStep || "") in done).length;
}

/** @param {Training} data @returns {HTMLElement} no name is asked for: it is written on the paper by hand */
function slipOf(data) {
  const facts = [
    ["Procedure", document.querySelector("article h1").textContent],
    ["Issue", String(data.issue)],
    ["Check code", data.code],
    ["Day", new Date().toLocaleDateString("en-CA")],
    ["Questions known", String(all("[data-nw-question]").length)],
    ["Steps rehearsed", String(all("[data-nw-step]").length)],
    ["Still to be signed off", data.needs.join(", ") || "none declared"],
  ];
  return make("section", { class: "nw-paper" }, [
    make("h2", { text: "Completion slip" }),
    make("dl", { class: "nw-facts" }, facts.map(([label, text]) => make("div", {}, [make("dt", { text: label }), make("dd", { text })]))),
    make("p", { text: "What one person learnt at home, by their own word. It is no sign-off and lets nobody work alone." }),
    make("p", { text: "Name ____________________   Seen by ____________________   Day __________" }),
  ]);
}

/** What changed in the issues after the one that was learnt, a question each; known all, the new issue is learnt. */
function showChanges(data, learnt, save) {
  if (!learnt.trained || learnt.trained >= data.issue) return;
  const fresh = data.changes.filter(([issue]) => issue > learnt.trained);
  const known = learnt.seen;
  const items = fresh.map(([issue, kind, text]) => {
    const item = make("li", {}, [make("details", { class: "nw-ask" }, [make("summary", { text: "Issue " + issue + " changed " + kind + ". What is it now?" }), make("p", { text })])]);
    knowing(item, issue + " " + text, known, () => {
      if (fresh.every(([number, , words]) => known[number + " " + words])) learnt.trained = data.issue;
      save();
    });
    return item;
  });
  notice("Changed since you trained", "You learnt issue " + learnt.trained + "; issue " + data.issue + " is posted.", [make("ul", { class: "nw-rows" }, items)]);
}
