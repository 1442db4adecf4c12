/** Making elements, without ever reading text as HTML. */

/**
 * @param {string} tag @param {Record<string, any>} [fields] attributes; `text`, and `on…` for listeners
 * @param {Array<Node|string>} [inside] @returns {HTMLElement}
 */
export function make(tag, fields, inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(fields || {})) {
    if (name === "text") made.textContent = value;
    else if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== undefined && value !== "") made.setAttribute(name, String(value));
  }
  made.append(...(inside || []));
  return made;
}

/** @param {string} id @returns {any} the page's data block of that id, or null */
export function pageData(id) {
  const block = document.getElementById(id);
  return block ? JSON.parse(block.textContent || "null") : null;
}

/** @param {string} text @param {() => void} act @param {string} [kind] @returns {HTMLElement} */
export function button(text, act, kind) {
  return make("button", { type: "button", class: "nw-button" + (kind ? " " + kind : ""), text, onclick: act });
}

/** @param {string} selector @returns {HTMLElement[]} */
export function all(selector) {
  return [...document.querySelectorAll(selector)];
}

let life = new AbortController();

/** Ends what an earlier article has left running; the preview swaps articles without leaving the page. */
export function beginAnew() {
  life.abort();
  life = new AbortController();
}

/** @returns {AbortSignal} aborted when this article goes */
export function whileHere() {
  return life.signal;
}

/** Calls every so many ms while this article is there. @param {() => void} act @param {number} every */
export function repeat(act, every) {
  const id = setInterval(act, every);
  whileHere().addEventListener("abort", () => clearInterval(id));
}
