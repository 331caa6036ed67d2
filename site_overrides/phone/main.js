// Starts everything once, and mounts what belongs to a page each time the theme brings a new one.

import { openStore } from "./store.js";
import { openLog } from "./log.js";
import { currentRun } from "./runs.js";
import { mountTicks } from "./ticks.js";
import { startTimers, mountTimerButtons } from "./timers.js";
import { openPlan } from "./plan_state.js";
import { awaitSearch, mountPaint, mountPlanFields, mountToday } from "./on_demand.js";
import { mountPlanPages } from "./plan_pages.js";
import { startOffline, mountOfflineState } from "./offline.js";
import { startStrip } from "./bar.js";
import { mountLog, startReminders } from "./logging.js";
import { mountTeaching } from "./teaching_parts.js";
import { arrive } from "./frame.js";

export const root = new URL("../", import.meta.url);

const store = await openStore(`day ${root.pathname}`);
const plan = openPlan(store);
const strip = startStrip(store);
const log = openLog(store);
const run = () => currentRun(store);
const timers = startTimers(store, strip, log, run);
const page = { store, plan, log, strip, timers, run };

awaitSearch(root, plan);
startOffline(root, strip, timers);
startReminders(page);

function mount() {
  arrive();
  mountPaint(page);
  mountPlanFields(page);
  mountPlanPages(page);
  mountTicks(page);
  mountToday(page);
  mountTimerButtons(page);
  mountLog(page);
  mountTeaching(page);
  mountOfflineState(store);
}

// @ts-ignore the theme offers its stream of documents as a global; opened from a disk it offers none
if (window.document$) window.document$.subscribe(mount);
else mount();
document.documentElement.dataset.ready = "";
