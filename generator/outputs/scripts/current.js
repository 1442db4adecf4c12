/** Is the card in someone's hand the one that is posted now? Its square code brings card, issue and check code. */
import { make, pageData } from "./dom.js";

/** Says so in its place. */
export function startCurrent() {
  const place = document.querySelector("[data-nw-current]");
  const cards = pageData("current_cards");
  const asked = new URLSearchParams(location.search);
  const name = asked.get("c");
  if (!place || !cards || !name) return;
  place.replaceChildren(...verdict(cards[name], asked.get("i") || "", asked.get("k") || ""));
}

/** @param {any} card @param {string} issue @param {string} code @returns {HTMLElement[]} */
function verdict(card, issue, code) {
  if (!card) return say("Do not use this card.", "Nothing of that name is posted. Ask whoever keeps the cards.");
  if (card.withdrawn) return say("Do not use this card.", card.withdrawn);
  if (card.issue === issue && card.code === code) return say("This card is current.", card.title + ", issue " + issue + ".", card);
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
