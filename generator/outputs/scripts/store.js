/** What a page remembers on this device only; nothing is sent anywhere. A rehearsal has a place of its own. */
import { rehearsal } from "./pace.js";

const PREFIX = rehearsal ? "newel.rehearsal." : "newel.";
/** What the browser would not keep; it lives until the page is left. @type {Map<string, any>} */
const unkept = new Map();
/** @type {(() => void)[]} */
const told = [];

/** @param {string} key @returns {any} what was kept under the key, or null */
export function recall(key) {
  if (unkept.has(key)) return unkept.get(key);
  try {
    return JSON.parse(localStorage.getItem(PREFIX + key));
  } catch {
    return null;
  }
}

/** @param {string} key @returns {any} what a rehearsal kept under the key, or null */
export function recallRehearsed(key) {
  try {
    return JSON.parse(localStorage.getItem("newel.rehearsal." + key));
  } catch {
    return null;
  }
}

/** @param {string} key @param {any} value null forgets it */
export function keep(key, value) {
  try {
    if (value === null) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, JSON.stringify(value));
    unkept.delete(key);
  } catch {
    unkept.set(key, value);
    told.forEach((say) => say());
  }
}

/** Calls when another window of this site has kept the key. @param {string} key @param {() => void} act @param {AbortSignal} signal */
export function whenKept(key, act, signal) {
  addEventListener("storage", (event) => {
    if (event.key === null || event.key === PREFIX + key) act();
  }, { signal });
}

/** Calls once the browser keeps nothing: full, or forbidden. @param {() => void} say */
export function whenUnkept(say) {
  told.push(say);
  try {
    localStorage.setItem("newel.trial", "1");
    localStorage.removeItem("newel.trial");
  } catch {
    say();
  }
}
