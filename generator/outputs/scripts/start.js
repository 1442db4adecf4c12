/** Wakes what is on this page; each part looks for its own place and does nothing without it. */
import { startAge } from "./age.js";
import { beginAnew } from "./dom.js";
import { startFilters } from "./filter.js";
import { startOffline } from "./offline.js";

/** What the script of this kind of page has added. @type {(() => void)[]} */
const added = [];

/** Starts a part now, and again whenever the page wakes. @param {() => void} start */
export function whenWoken(start) {
  added.push(start);
  start();
}

/** Called once now, and again by the preview when it has swapped the article. */
function wake() {
  beginAnew();
  startFilters();
  added.forEach((start) => start());
  startAge();
  startOffline();
}

globalThis.newelWake = wake;
wake();
