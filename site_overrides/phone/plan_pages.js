// Brings in the programs of a page only when the page has a use for them, so that others stay light.

import { mountParts } from "./on_demand.js";

/** @typedef {import("./logging.js").Page} Page */

/** @type {[string, (page: Page, element: HTMLElement) => unknown][]} */
const PARTS = [
  ["[data-plan], [data-question]", async (page, element) => (await import("./stops_told.js")).mountStops(page, element)],
  ["[data-plan-of-the-day]", async (page, element) => (await import("./plan_of_the_day.js")).mountPlanOfTheDay(page, element)],
  ["[data-kept]", async (page, element) => (await import("./kept_plans.js")).mountKeptPlans(page, element)],
  ["[data-crew]", async (page, element) => (await import("./crew_page.js")).mountCrew(page, element)],
  ["[data-view]", async (page, element) => (await import("./views_page.js")).mountView(page, element)],
  ["[data-question]", async (page, element) => (await import("./questions_page.js")).mountQuestion(page, element)],
  ["[data-matters]", async (page, element) => (await import("./questions_page.js")).mountMatters(page, element)],
  ["[data-pass]", async (page, element) => (await import("./pass_on.js")).mountPassOn(page, element)],
  ["[data-print-sheet]", async (page, element) => (await import("./sheet_page.js")).mountSheet(page, element)],
];

/** @type {typeof PARTS} these are right as they come, until the plan is changed */
const LATER = [
  ["[data-clock]", async (page, element) => (await import("./glance.js")).mountClock(page, element)],
  ["[data-refusals]", async (page, element) => (await import("./glance.js")).mountRefusals(page, element)],
];

/** @param {Page} page */
export function mountPlanPages(page) {
  page.strip.show("stops", []);
  const later = LATER.map(([mark, mount]) => /** @type {typeof PARTS[0]} */ ([mark, (_, element) => whenChanged(page, element, () => mount(page, element))]));
  return mountParts(page, [...later, ...PARTS]);
}

/** @param {Page} page @param {HTMLElement} element @param {() => unknown} mount @returns {unknown} */
function whenChanged({ plan }, element, mount) {
  if (plan.differs()) return mount();
  const stop = plan.watch(() => {
    if (!element.isConnected) return stop();
    if (!plan.differs()) return;
    stop();
    mount();
  });
}
