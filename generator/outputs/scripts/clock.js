/** The time now, and times of day and spans as a reader says them. */
import { rehearsal } from "./pace.js";
import { keep, recall } from "./store.js";

/** @type {number} when this rehearsal began, on the wall clock, in ms */
let epoch = 0;

/** @returns {number} ms since 1970: by the wall clock, so that sleep and reload lose nothing; fast in a rehearsal */
export function now() {
  if (!rehearsal) return Date.now();
  if (!epoch) {
    const kept = recall("epoch");
    epoch = typeof kept === "number" && kept <= Date.now() ? kept : Date.now();
    keep("epoch", epoch);
  }
  return epoch + (Date.now() - epoch) * rehearsal;
}

/** @param {number} moment ms since 1970 @returns {string} "14:05" on this device's clock */
export function momentOfDay(moment) {
  const date = new Date(moment);
  return timeOfDay(date.getHours() * 60 + date.getMinutes());
}

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
