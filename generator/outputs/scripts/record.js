/** The record of a run, read off the page and this device: on paper, or as a file that a spreadsheet opens. */
import { momentOfDay, now } from "./clock.js";
import { all, button, make } from "./dom.js";
import { rehearsal } from "./pace.js";

/** @typedef {{number: string, sentence: string, planned: string, done: string, timed: string, readings: string, note: string}} Row */

const HEADS = ["Step", "What", "Planned", "Done", "In place", "Readings", "Different"];

/** @param {import("./run.js").Run} run @param {string} procedure */
export function startRecord(run, procedure) {
  const place = document.querySelector(".nw-bar .nw-buttons");
  if (!place) return;
  place.append(
    button("Print run record", () => printRecord(run)),
    button("Save run record", () => saveFile(procedure + "-" + dayOf(run) + ".csv", asTable(run))),
  );
}

/** @returns {string} the day on which the run began */
function dayOf(run) {
  const date = new Date(run.state().began || now());
  return [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

/** @returns {string[][]} what stands above the steps: title, issue and code, day, the numbers of the part */
function headOf(run) {
  const facts = all(".nw-head .nw-facts > div").map((fact) => [fact.querySelector("dt").textContent, fact.querySelector("dd").textContent]);
  const job = all(".nw-job .nw-answers > div").map((sum) => [sum.querySelector("dt").textContent, sum.querySelector("dd").textContent]);
  const issue = facts.filter(([label]) => label === "Issue" || label === "Check code");
  return [
    ["Procedure", document.querySelector("article h1").textContent],
    ...(rehearsal ? [["Rehearsal", "no work was done"]] : []),
    ...(issue.length ? issue : [["Issue", "draft, not posted"]]),
    ["Day", dayOf(run)],
    ...job,
  ];
}

/** @returns {Row[]} */
function rowsOf(run) {
  const state = run.state();
  return all("[data-nw-step]").map((step) => {
    const id = step.dataset.nwStep || "";
    const text = (/** @type {string} */ selector) => step.querySelector(selector)?.textContent.trim() || "";
    const timed = state.timed[id];
    const readings = [...step.querySelectorAll("[data-nw-reading]")].map((cell) => {
      const read = state.readings[id + "/" + cell.dataset.nwReading];
      return read ? cell.dataset.nwLabel + ": " + read + " " + cell.textContent.trim() : "";
    });
    return {
      number: text(".nw-step-number"),
      sentence: [...step.querySelector(".nw-step-say").childNodes].slice(1).map((node) => node.textContent).join("").trim(),
      planned: text(".nw-dwell") || text(".nw-takes"),
      done: state.done[id] ? momentOfDay(state.done[id]) : "",
      timed: timed ? momentOfDay(timed.began) + " to " + momentOfDay(timed.stopped) : "",
      readings: readings.filter(Boolean).join("; ").trim(),
      note: state.notes[id] || "",
    };
  });
}

/** A spreadsheet takes a cell that begins so for a sum. @param {string} text @returns {string} */
function cellText(text) {
  const safe = /^[=+\-@\t\r]/.test(text) ? "'" + text : text;
  return '"' + safe.replaceAll('"', '""') + '"';
}

/** @returns {string} */
function asTable(run) {
  const rows = [...headOf(run), [], HEADS, ...rowsOf(run).map((row) => Object.values(row))];
  return "\ufeff" + rows.map((row) => row.map(cellText).join(",")).join("\r\n") + "\r\n";
}

/** @param {string} name @param {string} text */
function saveFile(name, text) {
  const address = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
  make("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), MINUTE_TO_SAVE);
}

const MINUTE_TO_SAVE = 60000;

/** Prints the record alone, and puts the page back. */
function printRecord(run) {
  const facts = headOf(run).map(([label, text]) => make("div", {}, [make("dt", { text: label }), make("dd", { text })]));
  const rows = rowsOf(run).map((row) => make("tr", {}, Object.values(row).map((text) => make("td", { text }))));
  printAlone(make("section", { class: "nw-paper" }, [
    make("h2", { text: "Run record" }),
    make("dl", { class: "nw-facts" }, facts),
    make("table", {}, [make("thead", {}, [make("tr", {}, HEADS.map((text) => make("th", { scope: "col", text })))]), make("tbody", {}, rows)]),
    make("p", { text: "Done by ____________________   Seen by ____________________" }),
  ]));
}

/** @param {HTMLElement} sheet */
export function printAlone(sheet) {
  const root = document.documentElement;
  document.querySelector("article").append(sheet);
  root.classList.add("nw-print-alone");
  addEventListener("afterprint", () => {
    sheet.remove();
    root.classList.remove("nw-print-alone");
  }, { once: true });
  window.print();
}
