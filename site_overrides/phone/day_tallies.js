// What a day came to, beside what was planned: the tallies of the computer's report, worked out on the phone.

import { figuresOf } from "./figures.js";
import { readings } from "./readings.js";
import { attempt } from "./running.js";
import { showing } from "./showing.js";
import { tallies, tallyMeasures } from "./tallies.js";
import { symbols } from "./words.js";
import { MINUS } from "./writing.js";

/**
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./plan_state.js").Formulas} Formulas
 * @typedef {Record<string, number | string>} Values
 */

/**
 * Every number that the plan had: as frozen where it was, else as this site computes it.
 * @param {Formulas} formulas @param {Values} [frozen] @returns {Values}
 */
export function plannedOf({ settle, compute }, frozen = {}) {
  return { ...compute(settle(frozen)).values, ...frozen };
}

/** What the day came to, by tally; what nobody wrote down is not there. @param {Entry[]} entries @param {Values} planned @returns {Record<string, number>} */
export function talliesOf(entries, planned) {
  const known = { ...planned, ...figuresOf(entries, readings, planned) };
  const found = Object.entries(tallies).map(([id, { uses, formula }]) => [id, uses.every((use) => use in known) ? attempt(formula, known) : null]);
  return Object.fromEntries(found.filter(([, value]) => typeof value === "number"));
}

/** Rows of a table: what, in the record, in the plan, how far apart. @param {Entry[]} entries @param {Values} planned @param {Formulas} formulas @param {import("./plan_state.js").System} system */
export function tallyRows(entries, planned, { units }, system) {
  const { showBoth } = showing(tallyMeasures, units, symbols);
  return Object.entries(talliesOf(entries, planned)).map(([id, value]) => {
    const { title, measure, plan } = tallies[id];
    const wanted = planned[plan ?? ""];
    const said = [title, showBoth(value, measure, system)];
    return typeof wanted === "number" ? [...said, showBoth(wanted, measure, system), wanted ? percent(value / wanted - 1) : ""] : [...said, "", ""];
  });
}

/** @param {number} share */
function percent(share) {
  const whole = Math.round(Math.abs(share) * 100);
  return whole ? `${share > 0 ? "+" : MINUS}${whole}%` : "0%";
}
