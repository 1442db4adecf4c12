/** Wakes what is on this page; each part looks for its own place and does nothing without it. */
import { startAge } from "./age.js";
import { startBench } from "./bench.js";
import { startCalculators } from "./calculator.js";
import { startCurrent } from "./current.js";
import { beginAnew } from "./dom.js";
import { startFilters } from "./filter.js";
import { startJob } from "./job.js";
import { startLearning } from "./learn.js";
import { startNotices } from "./notices.js";
import { startOffline } from "./offline.js";
import { startPlan } from "./plan.js";
import { startRecord } from "./record.js";
import { openRun } from "./run.js";
import { startSteps, startTicks } from "./ticks.js";
import { startTimers } from "./timers.js";

/** Called once now, and again by the preview when it has swapped the article. */
function wake() {
  const procedure = location.pathname.replace(/\/(index\.html)?$/, "").split("/").slice(-1)[0];
  beginAnew();
  startFilters();
  if (document.querySelector("[data-nw-step]")) startRun(procedure);
  startPlan();
  startJob(procedure);
  startCalculators();
  startCurrent();
  startAge();
  startOffline();
}

/** What a page of steps has. @param {string} procedure */
function startRun(procedure) {
  const run = openRun(procedure);
  startNotices();
  startTicks(run);
  startSteps(run);
  startRecord(run, procedure);
  startTimers(run);
  startBench(procedure, run);
  startLearning(procedure);
}

globalThis.newelWake = wake;
wake();
