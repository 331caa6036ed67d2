// The clock of the day in its order, and refusals with the way to the field that causes them.

import { hide } from "./changing.js";
import { refusalOf, sayer, follow, titleOf, tell } from "./plan_words.js";

/** @typedef {import("./plan_state.js").Plan} Plan */

/** Puts the moments of a list in the order of the day. @param {{plan: Plan}} page @param {HTMLElement} list */
export function mountClock({ plan }, list) {
  const rows = /** @type {HTMLElement[]} */ ([...list.querySelectorAll("[data-clock-of]")]);
  follow(plan, list, (formulas) => {
    const { values } = plan.compute(formulas).day;
    const at = (/** @type {HTMLElement} */ row) => Number(values[row.dataset.clockOf ?? ""] ?? Infinity);
    const ordered = rows.map((row) => ({ row, at: at(row) })).sort((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : 0)).map(({ row }) => row);
    if (ordered.some((row, place) => list.children[place] !== row)) list.replaceChildren(...ordered);
  });
}

/** @param {{plan: Plan}} page @param {HTMLElement} place */
export function mountRefusals({ plan }, place) {
  /** @type {import("./plan_state.js").Day["refused"] | undefined} what the farm's own plan leaves without a number */ let usual;
  let shown = "";
  follow(plan, place, (formulas) => {
    const { day } = plan.compute(formulas);
    usual ??= formulas.compute(formulas.settle({})).refused;
    const said = sayer(plan, formulas);
    /** @type {Map<string, {words: string, input: string | null, ids: string[]}>} */ const causes = new Map();
    for (const [id, refusal] of Object.entries(day.refused)) {
      // What the farm's own plan leaves without a number too, such as prices it does not give, is no news.
      if (refusal.because || usual?.[id]?.sentence === refusal.sentence) continue;
      const words = refusalOf(refusal, day.values, said);
      causes.set(words, { words, input: refusal.input, ids: [...(causes.get(words)?.ids ?? []), id] });
    }
    const now = JSON.stringify([...causes.values()]);
    if (now === shown) return;
    shown = now;
    hide(place, causes.size === 0);
    place.replaceChildren(...[...causes.values()].map((cause) => sentence(place, cause)));
  });
}

/** @param {HTMLElement} place @param {{words: string, input: string | null, ids: string[]}} cause */
function sentence(place, { words, input, ids }) {
  const row = document.createElement("p");
  row.className = "field__refused";
  row.append(input ? words : tell("refused_for", { words, titles: ids.map(titleOf).join(", ") }));
  if (input) {
    const link = document.createElement("a");
    link.className = "button button--small";
    link.href = `${place.dataset.fields ?? ""}#${input}`;
    link.textContent = titleOf(input);
    row.append(" ", link);
  }
  return row;
}
