/** How old a copy of the site is: a copy on a stick or kept by a device does not renew itself. */
const ONE_DAY = 86400000;
/** A copy of the site that is older than this, in days, may not know of the newest issue. */
const OLD_COPY = 7;

/** Days since a copy was made, 0 while it is young enough or its day is not known. @param {string} made @returns {number} */
export function daysTooOld(made) {
  const days = Math.floor((Date.now() - Date.parse(made)) / ONE_DAY);
  return days >= OLD_COPY ? days : 0;
}

/** "25 November 2026" of "2026-11-25". @param {string} day @returns {string} */
export function dayWords(day) {
  const read = new Date(day);
  return isNaN(read.getTime()) ? day : read.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });
}

/** On every page of a copy to carry: the strip at the top says so once the copy is old. */
export function startAge() {
  const strip = document.querySelector("[data-nw-copied]");
  const made = strip ? strip.getAttribute("data-nw-copied") || "" : "";
  const days = daysTooOld(made);
  if (!strip || !days) return;
  strip.classList.add("nw-old");
  strip.querySelector("b").textContent = "Old copy";
  strip.querySelector("span").textContent = "made " + days + " days ago, on " + dayWords(made) + ". It may be wrong by now: ask for a new one.";
}
