/** Times of day and spans as a reader says them. */

/** @param {number} minutes after midnight @returns {string} "14:05" */
export function timeOfDay(minutes) {
  const whole = Math.round(minutes);
  const day = ((whole % 1440) + 1440) % 1440;
  return String(Math.floor(day / 60)).padStart(2, "0") + ":" + String(day % 60).padStart(2, "0");
}

/** @param {string} text "14:05" @returns {number} minutes after midnight, or NaN */
export function minutesOf(text) {
  const found = /^(\d{1,2}):(\d{2})$/.exec(text.trim());
  return found ? Number(found[1]) * 60 + Number(found[2]) : NaN;
}

/** @param {number} seconds @returns {string} "8:00", "1:02:05", and with a minus once it is over */
export function countdown(seconds) {
  const sign = seconds < 0 ? "−" : "";
  const whole = Math.abs(Math.ceil(seconds));
  const parts = [Math.floor(whole / 60) % 60, whole % 60].map((part) => String(part).padStart(2, "0"));
  const hours = Math.floor(whole / 3600);
  return sign + (hours ? hours + ":" : "") + parts.join(":");
}

/** @param {number} minutes @returns {string} "2 h 05 min", "45 min" */
export function spanOf(minutes) {
  const whole = Math.round(minutes);
  const rest = whole % 60;
  if (whole < 60) return whole + "\u00a0min";
  return Math.floor(whole / 60) + "\u00a0h" + (rest ? "\u00a0" + String(rest).padStart(2, "0") + "\u00a0min" : "");
}
