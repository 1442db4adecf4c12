/** What a page remembers on this device only; nothing is sent anywhere. */

/** @param {string} key @returns {any} what was kept under the key, or null */
export function recall(key) {
  try {
    return JSON.parse(localStorage.getItem("newel." + key));
  } catch {
    return null;
  }
}

/** @param {string} key @param {any} value null forgets it */
export function keep(key, value) {
  try {
    if (value === null) localStorage.removeItem("newel." + key);
    else localStorage.setItem("newel." + key, JSON.stringify(value));
  } catch {
    /* a browser that keeps nothing still shows the page */
  }
}
