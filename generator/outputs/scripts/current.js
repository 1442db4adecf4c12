/** Is the card in someone's hand the one that is posted now? Its square code brings card, issue and check code. */
import { dayWords, daysTooOld } from "./age.js";
import { isCode, plainCode } from "./codes.js";
import { button, make, pageData } from "./dom.js";
import { whenWoken } from "./start.js";

/** Says so in its place; without a scan there is a box for the code that is printed on the card. */
function startCurrent() {
  const place = document.querySelector("[data-nw-current]");
  const data = pageData("current_cards");
  if (!place || !data) return;
  const asked = new URLSearchParams(location.search);
  const name = asked.get("c");
  const answer = make("div", { class: "nw-answer", role: "status" });
  if (name) answer.replaceChildren(...verdict(data, name, asked.get("i") || "", plainCode(asked.get("k") || "")));
  place.replaceChildren(answer, codeBox(data, answer), make("p", { class: "nw-built", text: ageOfCopy(data.built) }));
}

/** @param {any} data @param {HTMLElement} answer @returns {HTMLElement} */
function codeBox(data, answer) {
  const box = make("input", { class: "nw-box", type: "text", size: 8, maxlength: 12, autocomplete: "off", autocapitalize: "characters", spellcheck: "false" });
  const compare = () => answer.replaceChildren(...typed(data, plainCode(box.value)));
  box.addEventListener("keydown", (event) => event.key === "Enter" && compare());
  const label = make("label", {}, [make("span", { text: "Check code on the card" }), box]);
  return make("div", { class: "nw-compare" }, [label, button("Compare", compare, "nw-main")]);
}

/** The answers for a code without a card's name; five letters may stand on more than one card. @param {any} data @param {string} code */
function typed(data, code) {
  if (!isCode(code)) return say("This is no check code.", "A code has five letters and figures, and one of these is misread. There is no 0, 1, I or O in a code.");
  const names = Object.keys(data.cards).filter((name) => plainCode(data.cards[name].code) === code || code in (data.cards[name].codes || {}));
  if (!names.length) return unknown("No card that was ever posted here has this code.");
  return names.flatMap((name) => verdict(data, name, "", code));
}

/** How old this copy of the site is. @param {string} built @returns {string} */
function ageOfCopy(built) {
  const days = daysTooOld(built);
  if (!days) return built && "These pages are of " + dayWords(built) + ".";
  return "This copy of the site is " + days + " days old (" + dayWords(built) + "). It may not know of a newer issue: open the newest copy.";
}

/** @param {any} data @param {string} name @param {string} issue @param {string} code @returns {HTMLElement[]} */
function verdict(data, name, issue, code) {
  const card = data.cards[name];
  if (!card) return unknown("No card “" + name + "” is posted here.");
  if (card.withdrawn) return say("Withdrawn: do not use this card.", titled(card) + card.withdrawn, card);
  if (issue === "draft") return say("A draft: do not use this card.", titled(card) + "Nobody has approved it.", card);
  if (!card.issue) return say("Not posted yet: do not use this card.", card.title + ".", card);
  if (plainCode(card.code) === code) return current(data, card);
  const since = (card.codes || {})[code] || "";
  if (!since) return unknown(titled(card) + "No issue of it had the check code " + (code || "that is missing") + ". Issue " + card.issue + " is posted now.", card);
  const changes = (card.changes[since] || []).map((/** @type {string} */ change) => make("li", { text: change }));
  const list = changes.length ? [make("p", { class: "nw-since", text: "Changed since issue " + since + ":" }), make("ul", {}, changes)] : [];
  return [...say("Replace this card.", titled(card) + "It is issue " + since + "; issue " + card.issue + " is posted now. Until it is replaced, work by the procedure’s page.", card), ...list];
}

/** An old copy of the site cannot vouch for a card. @param {any} data @param {any} card */
function current(data, card) {
  const text = card.title + ", issue " + card.issue + ".";
  if (!daysTooOld(data.built)) return say("This card is current.", text, card);
  return say("This card was current on " + dayWords(data.built) + ".", text + " Whether it is today, only a newer copy of the site can say.", card);
}

/** @param {any} card */
const titled = (card) => card.title + ". ";

/** @param {string} why @param {any} [card] */
const unknown = (why, card) => say("Unknown card: do not use it.", why + " Ask whoever keeps the cards.", card);

/** @param {string} answer @param {string} why @param {any} [card] @returns {HTMLElement[]} */
function say(answer, why, card) {
  const links = card ? [[card.page, "Open the procedure"], [card.pdf, "Print the posted card"]].filter(([to]) => to) : [];
  const row = make("p", { class: "nw-answer-ways" }, links.map(([to, text]) => make("a", { class: "nw-button", href: to, text })));
  return [make("p", { class: "nw-verdict", text: answer }), make("p", { text: why }), ...(links.length ? [row] : [])];
}

whenWoken(startCurrent);
