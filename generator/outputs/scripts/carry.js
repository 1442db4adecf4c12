/** Taking an answer along: as text with its inputs, its issue and the date, or as a link that holds the inputs. */
import { make } from "./dom.js";

/** @typedef {{label: string, name: string, text: string}} Line */

/** @param {any} data @param {Line[]} lines @param {string} label @param {string} shown @returns {string} */
export function asText(data, lines, label, shown) {
  const now = new Date();
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  const day = [now.getFullYear(), two(now.getMonth() + 1), two(now.getDate())].join("-");
  return [
    data.title + ". " + label + ": " + shown,
    ...lines.map((line) => line.label + " (" + line.name + "): " + line.text),
    "Formula " + data.name + ", issue " + data.code + ", page of " + data.date + ".",
    "Worked out " + day + " " + two(now.getHours()) + ":" + two(now.getMinutes()) + ". The supplier’s sheet, the safety office and local codes stand above it.",
  ].join("\n");
}

/** @param {Record<string, string>} texts by name @returns {string} the part of an address after # */
export function asHash(texts) {
  return new URLSearchParams(texts).toString();
}

/** @returns {Record<string, string>} what the address holds, nothing for a plain anchor */
export function fromHash() {
  const hash = location.hash.slice(1);
  return hash.includes("=") ? Object.fromEntries(new URLSearchParams(hash)) : {};
}

/**
 * Puts a text on the clipboard; where the browser refuses, shows it to be copied by hand.
 * @param {string} text @param {HTMLElement} place @param {(words: string) => void} say
 */
export async function copy(text, place, say) {
  try {
    await navigator.clipboard.writeText(text);
    place.replaceChildren();
    say("Copied.");
  } catch {
    const shown = /** @type {HTMLTextAreaElement} */ (make("textarea", { class: "nw-box", readonly: true, rows: "6", "aria-label": "Text to copy" }));
    shown.value = text;
    place.replaceChildren(shown);
    shown.select();
    say("The browser does not let a page copy. The text is marked: copy it yourself.");
  }
}
