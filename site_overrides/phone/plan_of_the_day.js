// Says on stations and in the log when the plan on this phone is not the one that the day began with: it was changed
// here, or the day began on another phone.

import { watchWhileShown, write } from "./changing.js";
import { loaded } from "./plan_state.js";
import { canonical, phoneOf } from "./records.js";
import { frozenIn, frozenPlan, openRun } from "./runs.js";
import { replacePlan } from "./undoing.js";
import { say } from "./words_said.js";

/** @typedef {import("./ticks.js").Page} Page @typedef {import("./records.js").Entry} Entry */

/** @param {Page} page @param {HTMLElement} place  with a button that has the day go on with the new plan */
export function mountPlanOfTheDay(page, place) {
  const button = /** @type {HTMLButtonElement} */ (place.querySelector("button"));
  const words = /** @type {HTMLElement} */ (place.querySelector("span"));
  /** @type {Entry | undefined} */ let frozen;
  const paint = async () => {
    frozen = planOfTheDay(page);
    const isQuiet = !frozen || (await isAsNow(page, frozen));
    if (!isQuiet && isOfAnother(page, frozen)) {
      write(words, say("plan_other"));
      write(button, say("plan_other_take"));
    }
    if (place.hidden !== isQuiet) place.hidden = isQuiet;
  };
  button.addEventListener("click", () => (frozen && isOfAnother(page, frozen) ? takePlanOfTheDay(page, frozen) : takeNewPlan(page)));
  paint();
  watchWhileShown(page.store, place, paint, /^plan\//);
  watchWhileShown(page.store, place, () => planOfTheDay(page) !== frozen && paint(), /^(log|state|run)\//); // each tick comes by here
}

/** The plan that an open day goes by. @param {Page} page */
const planOfTheDay = ({ store, log }) => frozenIn(log.of(openRun(store)).standing());

/** @param {Page} page @param {Entry} [frozen] */
const isOfAnother = ({ log }, frozen) => frozen !== undefined && phoneOf(frozen) !== log.phone();

/** Of a day that began on another phone only what was set counts, for that phone may have another version. @param {Page} page @param {Entry} frozen */
async function isAsNow(page, frozen) {
  const formulas = await loaded(page.plan);
  await page.plan.prepare(formulas);
  if (!isOfAnother(page, frozen)) return canonical((await frozenPlan(page.plan)).values) === canonical(frozen.values);
  const { settings } = page.plan.compute(formulas);
  const there = formulas.settle(frozen.values ?? {});
  return [...Object.keys(formulas.choices), ...Object.keys(formulas.inputs)].every((id) => there[id] === settings[id]);
}

/** @param {Page} page @param {Entry} frozen */
async function takePlanOfTheDay({ plan }, { values = {} }) {
  const { settle, inputs, choices } = await loaded(plan);
  const there = settle(values);
  const differing = (/** @type {object} */ those, /** @type {Record<string, number | string>} */ usual) => Object.fromEntries(Object.keys(those).filter((id) => there[id] !== usual[id]).map((id) => [id, there[id]]));
  const options = differing(choices, settle({}));
  replacePlan(plan, { ...options, ...differing(inputs, settle(options)) });
}

/** @param {Page} page */
async function takeNewPlan(page) {
  const corrects = planOfTheDay(page)?.id;
  await page.log.add(page.run(), { ...(await frozenPlan(page.plan)), corrects });
}
