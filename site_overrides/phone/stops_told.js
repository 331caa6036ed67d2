// Where the plan is changed, its stops are told at the edge of the screen, however far off they stand; so is a warning
// that a change has brought.

import { watches } from "./plan_content.js";
import { follow, tell } from "./plan_words.js";

/** @typedef {import("./plan_state.js").Plan} Plan */

/** @param {{plan: Plan, strip: import("./bar.js").Strip}} page @param {HTMLElement} element */
export function mountStops({ plan, strip }, element) {
  /** @type {Set<string> | undefined} what the farm's own plan has is no news */ let usual;
  follow(plan, element, (formulas) => {
    if (!element.isConnected) return;
    usual ??= new Set(formulas.compute(formulas.settle({})).alerts);
    const { alerts } = plan.compute(formulas).day;
    const stops = alerts.filter(isStop);
    const warnings = alerts.filter((id) => id in watches && !usual?.has(id));
    strip.show("stops", rowsFor(stops.length ? "stop" : "warning", stops.length ? stops : warnings));
  });
}

/** @param {string} kind @param {string[]} found @returns {import("./bar.js").Row[]} */
function rowsFor(kind, [first, ...more]) {
  if (!first) return [];
  const words = tell(kind, { title: watches[first].title });
  const text = more.length ? tell("and_more", { words, count: more.length }) : words;
  return [{ text, button: tell("see"), buttonName: `${tell("see")}: ${text}`, opens: `plan/#watch-${first}`, bad: kind === "stop" }];
}

const isStop = (/** @type {string} */ id) => Boolean(watches[id]?.stop);

/** The stops that the plan would have with other changes besides its own. @param {Plan} plan @param {import("./plan_state.js").Formulas} formulas @param {Record<string, import("./plan_state.js").Value>} changes */
export const stopsWith = (plan, formulas, changes) =>
  formulas.compute(formulas.settle({ ...plan.changes(), ...changes })).alerts.filter(isStop).map((id) => watches[id].title);
