/** Is the card in someone's hand the one that is posted now? Its square code brings card, issue and check code. */
import { make, pageData } from "./dom.js";

const ONE_DAY = 86400000;
/** A copy of the site that is older than this, in days, may not know of the newest issue. */
const OLD_COPY = 7;

/** Says so in its place. */
export function startCurrent() {
  const place = document.querySelector("[data-nw-current]");
  const data = pageData("current_cards");
  const asked = new URLSearchParams(location.search);
  const name = asked.get("c");
  if (!place || !data || !name) return;
  const answer = verdict(data.cards[name], asked.get("i") || "", plainCode(asked.get("k") || ""));
  place.replaceChildren(...answer, make("p", { class: "nw-built", text: ageOfCopy(data.built) }));
}

/** @param {string} code @returns {string} */
function plainCode(code) {
  return code.toUpperCase().replace(/[^0-9A-Z]/g, "");
}

/** How old this copy of the site is. @param {string} built @returns {string} */
function ageOfCopy(built) {
  const days = Math.floor((Date.now() - Date.parse(built)) / ONE_DAY);
  if (!(days >= OLD_COPY)) return built && "As of " + built + ".";
  return "This copy of the site is " + days + " days old (" + built + "). It may not know of a newer issue: open the newest copy.";
}

/** @param {any} card @param {string} issue @param {string} code @returns {HTMLElement[]} */
function verdict(card, issue, code) {
  if (!card) return say("Do not use this card.", "Nothing of that name is posted. Ask whoever keeps the cards.");
  if (card.withdrawn) return say("Do not use this card.", card.withdrawn);
  if (issue === "draft") return say("Do not use this card.", "It is a draft, which nobody has approved.", card);
  if (!card.issue) return say("Do not use this card.", "It is not posted yet.", card);
  if (plainCode(card.code) === code) return say("This card is current.", card.title + ", issue " + card.issue + ".", card);
  const changes = card.changes[issue] || [];
  const why = card.issue === issue ? "Its check code is not the posted one." : "Issue " + card.issue + " is posted now.";
  return [...say("Replace this card.", why, card), make("ul", {}, changes.map((/** @type {string} */ change) => make("li", { text: change })))];
}

/** @param {string} answer @param {string} why @param {any} [card] @returns {HTMLElement[]} */
function say(answer, why, card) {
  const links = card ? [[card.pdf, "Print the posted card"], [card.page, "Open the procedure"]].filter(([to]) => to) : [];
  return [
    make("p", { class: "nw-verdict", text: answer }),
    make("p", { text: why }),
    make("p", {}, links.map(([to, text]) => make("a", { class: "nw-button", href: to, text }))),
  ];
}
