// What a question needs of the plan: values as they are shown, and drawn numbers rounded to what can be read.

import { drillMeasures } from "./drills.js";
import { fromSi, showing, toSi } from "./showing.js";
import { names, options, symbols } from "./words.js";

const PLACE = /\{([a-z][a-z0-9_]*)( first)?\}/g;
const FIVE_MINUTES = 300;

/**
 * @param {import("./plan_state.js").Plan} plan @param {import("./plan_state.js").Formulas} formulas @param {() => number} random
 * @returns {import("./posing.js").Table}
 */
export function drillTable(plan, formulas, random) {
  const measures = { ...formulas.measures, ...drillMeasures };
  const { show, showBoth } = showing(measures, formulas.units, symbols);
  const system = plan.system();
  return {
    changes: plan.changes(),
    random,
    round(value, of, measure) {
      const name = measure || formulas.measureOf[of];
      const { form, [system]: shown } = measures[name];
      if (form === "clock") return Math.round(value / FIVE_MINUTES) * FIVE_MINUTES;
      if (form === "duration") return Math.round(value / 60) * 60;
      if (formulas.inputs[of]?.whole) return Math.round(value);
      const [unit, factor] = [formulas.units[shown.unit], 10 ** (formulas.digitsOf[of] ?? shown.digits)];
      return toSi(Math.round(fromSi(value, unit) * factor) / factor, unit);
    },
    say(text, values, own) {
      let whole = true;
      const words = text.replace(PLACE, (_, id, first) => {
        const value = values[id];
        if (value === undefined || Number.isNaN(value)) whole = false;
        if (!whole) return "";
        if (id in options) return options[id][String(value)];
        if (typeof value === "string") return names[value] ?? value;
        const [measure, digits] = id in own ? [own[id], null] : [formulas.measureOf[id], formulas.digitsOf[id] ?? null];
        return (first ? show : showBoth)(value, measure, system, digits);
      });
      return whole ? words : undefined;
    },
  };
}
