/** The page of a procedure: the plan, the numbers of the part, and what a page of steps has. */
import { startBench } from "./bench.js";
import { startJob } from "./job.js";
import { startLearning } from "./learn.js";
import { startNotices } from "./notices.js";
import { startPlan } from "./plan.js";
import { startRecord } from "./record.js";
import { openRun } from "./run.js";
import { whenWoken } from "./start.js";
import { startSteps, startTicks } from "./ticks.js";
import { startTimers } from "./timers.js";

function startProcedure() {
  const procedure = location.pathname.replace(/\/(index\.html)?$/, "").split("/").slice(-1)[0];
  if (document.querySelector("[data-nw-step]")) startRun(procedure);
  startPlan();
  startJob(procedure);
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

whenWoken(startProcedure);
