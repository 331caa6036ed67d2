// Starts everything once, and mounts what belongs to a page each time a new one takes its place.

import { breathe } from "./breathing.js";
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
import { arrive, startFrame } from "./frame.js";
import { startDaylight } from "./daylight.js";
import { earlyTaps } from "./early_taps.js";
import { startTurning } from "./turning.js";

export const root = new URL("../", import.meta.url);

const store = await openStore(`day ${root.pathname}`);
const plan = openPlan(store);
const strip = startStrip(store);
const log = openLog(store);
const run = () => currentRun(store);
const timers = startTimers(store, strip, log, run);
const page = { store, plan, log, strip, timers, run };

startOffline(root, strip, timers);
const reminding = startReminders(page);

/** Resolves when every program of the page is there, and hears what is tapped. */
function mount() {
  arrive();
  strip.mount();
  const coming = [mountPaint(page), mountPlanFields(page), mountPlanPages(page), mountToday(page), mountLog(page), mountTeaching(page)];
  mountTicks(page);
  mountTimerButtons(page);
  mountOfflineState(store);
  return Promise.allSettled(coming); // a part that does not come keeps the others from nothing
}

startFrame();
startTurning(root, mount);
await breathe();
// From here to what listens to taps nothing else may come in between.
const doEarlyTaps = earlyTaps();
startDaylight();
awaitSearch(root, plan);
await mount();
await reminding;
doEarlyTaps();
document.documentElement.dataset.ready = "";
