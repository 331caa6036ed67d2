// Brings in what belongs to the log when there is a use for it, so that other pages stay light.

import { mountParts, once } from "./on_demand.js";
import { runOf } from "./runs.js";
import { mountStaleDay } from "./stale_day.js";

/** @typedef {import("./ticks.js").Page & {timers: import("./timers.js").Timers, strip: import("./bar.js").Strip}} Page */

/** @type {[string, (page: Page, element: HTMLElement) => unknown][]} */
const PARTS = [
  ["[data-readings]", mountReadings],
  ["[data-log]", async (page, element) => (await import("./log_page.js")).mountLogPage(page, element)],
  ["[data-exchange]", async (page, element) => (await import("./exchange.js")).mountExchange(page, element)],
  ["[data-record]", async (page, element) => (await import("./record_page.js")).mountRecordPage(page, element)],
];

/** @param {Page} page */
export function mountLog(page) {
  mountStaleDay(page);
  return mountParts(page, PARTS);
}

const fetchSheet = once(() => import("./reading_sheet.js"));
const QUIET = 1500;

/** A tap is heard from the start, before there is anything that paints the buttons. @param {Page} page @param {HTMLElement} place */
async function mountReadings(page, place) {
  const buttons = /** @type {HTMLElement[]} */ ([...place.querySelectorAll("[data-reading]")]);
  for (const button of buttons) {
    button.addEventListener("click", async () => (await fetchSheet()).openReading(page, button.dataset.reading ?? ""));
  }
  if (page.run()) setTimeout(fetchSheet, QUIET); // on a working day the first reading is not kept waiting
  (await import("./reading_buttons.js")).paintReadings(page, place, buttons);
}

/** Readings that are due, and what else must not be forgotten, once a day has been started. @param {Page} page */
export function startReminders(page) {
  let started = false;
  const start = async () => {
    if (started || !runOf(page.store, page.run())) return;
    started = true;
    (await import("./reminders.js")).startReminding(page);
  };
  page.store.watch((_, keys) => void (keys.some((key) => key.startsWith("run/")) && start()));
  return start();
}
