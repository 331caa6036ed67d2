// Says on stations and in the log when the plan on this phone is no longer the one that the day began with.

import { loaded } from "./plan_state.js";
import { canonical } from "./records.js";
import { frozenIn, frozenPlan, openRun } from "./runs.js";
import { watchWhileShown } from "./ticks.js";

/** @typedef {import("./ticks.js").Page} Page */

/** @param {Page} page @param {HTMLElement} place  with a button that has the day go on with the new plan */
export function mountPlanOfTheDay(page, place) {
  const button = /** @type {HTMLButtonElement} */ (place.querySelector("button"));
  /** @type {import("./records.js").Entry | undefined} */ let frozen;
  const paint = async () => {
    frozen = planOfTheDay(page);
    const isQuiet = !frozen || (await isAsNow(page, frozen));
    if (place.hidden !== isQuiet) place.hidden = isQuiet;
  };
  button.addEventListener("click", () => takeNewPlan(page));
  paint();
  watchWhileShown(page.store, place, paint, /^plan\//);
  watchWhileShown(page.store, place, () => planOfTheDay(page) !== frozen && paint(), /^(log|state|run)\//); // each tick comes by here
}

/** The plan that an open day goes by. @param {Page} page */
const planOfTheDay = ({ store, log }) => frozenIn(log.of(openRun(store)).standing());

/** @param {Page} page @param {import("./records.js").Entry} frozen */
async function isAsNow({ plan }, frozen) {
  await plan.prepare(await loaded(plan));
  return canonical((await frozenPlan(plan)).values) === canonical(frozen.values);
}

/** @param {Page} page */
async function takeNewPlan(page) {
  const corrects = planOfTheDay(page)?.id;
  await page.log.add(page.run(), { ...(await frozenPlan(page.plan)), corrects });
}
