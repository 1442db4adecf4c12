/** One run of a procedure on this device: what is done, timed, read and noted; the same in every window. */
import { now } from "./clock.js";
import { whileHere } from "./dom.js";
import { keep, recall, whenKept } from "./store.js";

/** @typedef {{began: number, ends: number}} Timer ms since 1970 */
/** @typedef {{began: number, done: Record<string, number>, ready: Record<string, number>, notes: Record<string, string>, readings: Record<string, string>, timers: Record<string, Timer>, timed: Record<string, {began: number, stopped: number}>}} RunState */
/** @typedef {{state: () => RunState, change: (act: (state: RunState) => void) => void, replace: (state: RunState|null) => void, watch: (show: (state: RunState) => void) => void}} Run */

const TABLES = ["done", "ready", "notes", "readings", "timers", "timed"];

/** @param {string} procedure @returns {Run} */
export function openRun(procedure) {
  const key = "run." + procedure;
  let state = readRun(key);
  /** @type {((state: RunState) => void)[]} */
  const watchers = [];
  const tell = () => watchers.forEach((show) => show(state));
  const replace = (/** @type {RunState|null} */ other) => {
    keep(key, other);
    state = readRun(key);
    tell();
  };
  whenKept(key, () => { state = readRun(key); tell(); }, whileHere());
  return {
    state: () => state,
    change(act) {
      const fresh = readRun(key);
      fresh.began = fresh.began || now();
      act(fresh);
      replace(fresh);
    },
    replace,
    watch(show) {
      watchers.push(show);
      show(state);
    },
  };
}

/** @param {string} key @returns {RunState} what was kept, an empty run where that cannot be read */
function readRun(key) {
  const kept = recall(key);
  const is = (/** @type {any} */ thing) => typeof thing === "object" && thing !== null && !Array.isArray(thing);
  const found = is(kept) ? structuredClone(kept) : {};
  for (const table of TABLES) if (!is(found[table])) found[table] = {};
  if (typeof found.began !== "number") found.began = 0;
  return found;
}
