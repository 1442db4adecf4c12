/** Wakes what is on this page; each part looks for its own place and does nothing without it. */
import { startBench } from "./bench.js";
import { startCalculators } from "./calculator.js";
import { startCurrent } from "./current.js";
import { startFilters } from "./filter.js";
import { startJob } from "./job.js";
import { startPlan } from "./plan.js";
import { startSteps, startTicks } from "./ticks.js";
import { startTimers } from "./timers.js";

/** Called once now, and again by the preview when it has swapped the article. */
function wake() {
  const procedure = location.pathname.replace(/\/(index\.html)?$/, "").split("/").slice(-1)[0];
  startTicks();
  startFilters();
  startSteps(procedure);
  startTimers(procedure);
  startPlan();
  startJob(procedure);
  startCalculators();
  startCurrent();
  startBench(procedure);
}

globalThis.newelWake = wake;
wake();
