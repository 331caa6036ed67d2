// Brings in what belongs to the log when there is a use for it, so that other pages stay light.

import { runOf } from "./runs.js";

/** @typedef {import("./ticks.js").Page & {timers: import("./timers.js").Timers, strip: import("./bar.js").Strip}} Page */

/** @type {[string, (page: Page, element: HTMLElement) => unknown][]} */
const PARTS = [
  ["[data-readings]", async (page, element) => (await import("./reading_buttons.js")).mountReadingButtons(page, element)],
  ["[data-log]", async (page, element) => (await import("./log_page.js")).mountLogPage(page, element)],
  ["[data-exchange]", async (page, element) => (await import("./exchange.js")).mountExchange(page, element)],
  ["[data-record]", async (page, element) => (await import("./record_page.js")).mountRecordPage(page, element)],
];

/** @param {Page} page */
export function mountLog(page) {
  for (const [name, mount] of PARTS) {
    for (const element of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(name))) mount(page, element);
  }
}

/** Readings that are due, and what else must not be forgotten, once a day has been started. @param {Page} page */
export function startReminders(page) {
  let started = false;
  const start = async () => {
    if (started || !runOf(page.store, page.run())) return;
    started = true;
    (await import("./reminders.js")).startReminding(page);
  };
  start();
  page.store.watch((_, keys) => void (keys.some((key) => key.startsWith("run/")) && start()));
}
