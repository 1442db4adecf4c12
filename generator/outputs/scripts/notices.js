/** What a page says about itself: that nothing is kept here, or that this is a rehearsal. */
import { make } from "./dom.js";
import { rehearsal } from "./pace.js";
import { whenUnkept } from "./store.js";

/** @param {string} title @param {string} text @param {Node[]} [more] */
export function notice(title, text, more) {
  const heading = document.querySelector("article h1");
  if (!heading) return;
  const found = [...document.querySelectorAll(".nw-banner b")].some((one) => one.textContent === title);
  if (!found) heading.after(make("div", { class: "nw-banner nw-banner-note nw-tool", role: "status" }, [make("b", { text: title }), " ", make("span", { text }), ...(more || [])]));
}

/** Only where there is something to keep. */
export function startNotices() {
  if (rehearsal) {
    notice("Rehearsal", "The clock runs " + rehearsal + " times as fast. Touch no chemical and no machine by it. ", [make("a", { href: location.pathname, text: "Leave the rehearsal" })]);
  }
  whenUnkept(() => notice("Nothing is kept on this device", "Its storage is full or closed to this page. Everything works until you leave the page: print or save the record first."));
}
