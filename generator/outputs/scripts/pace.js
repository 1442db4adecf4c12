/** How fast this page's clock runs: once as fast as the wall clock, or many times so in a rehearsal. */

/** Faster than this nobody could follow. */
const FASTEST = 200;

/** @returns {number} 0 for a run; for a rehearsal how many times as fast as the wall clock */
function pace() {
  const asked = Number(new URLSearchParams(location.search).get("rehearsal"));
  return asked >= 1 ? Math.min(asked, FASTEST) : 0;
}

export const rehearsal = pace();
