// What people type into a field: with or without a unit, with a point or a comma, as a time of day or a span.

import { neat } from "./neat_steps.js";
import { fromSi, readNumber, toSi } from "./showing.js";
import { say } from "./words_said.js";

/**
 * @typedef {import("./plan_state.js").Formulas} Formulas
 * @typedef {import("./plan_state.js").System} System
 * @typedef {import("./showing.js").Measure} Measure
 * @typedef {import("./showing.js").Unit} Unit
 * @typedef {{value?: number, refused?: string}} Typed
 */

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86400;
const SPANS = { s: 1, min: MINUTE, h: HOUR, day: DAY };
const SHORT = new Map([["m", "min"], ["d", "day"]]); // in a span they mean nothing else

/** The unit in which a bare number stands for a span, going by the size of the span that stood there. @param {number} size */
export const spanUnit = (size) => (Math.abs(size) < 2 * MINUTE ? 1 : Math.abs(size) < 2 * HOUR ? MINUTE : HOUR);

/**
 * @param {string} text @param {string} id @param {Formulas} formulas @param {System} system @param {number} before what stood there
 * @returns {Typed}
 */
export function readTyped(text, id, formulas, system, before) {
  const measure = formulas.measures[formulas.measureOf[id]];
  const words = text.trim().replace(/\u00a0/g, " ");
  if (!words) return { refused: say("read_empty") };
  if (measure.form === "clock") return readClock(words);
  if (measure.form === "duration") return readSpan(words, before, formulas.units);
  return readMeasured(words, measure, formulas.units, system);
}

/** @param {string} words @returns {Typed} */
function readClock(words) {
  const [, hours, minutes, half] = /^(\d{1,2})(?:[:.h]?(\d{2})|(?=\s*[ap]\.?m))\s*(?:([ap])\.?m\.?)?$/i.exec(words) ?? [];
  const hour = half ? (Number(hours) % 12) + (half.toLowerCase() === "p" ? 12 : 0) : Number(hours);
  const isClock = hour < 24 && Number(minutes ?? 0) < 60 && !(half && (Number(hours) < 1 || Number(hours) > 12));
  return isClock ? { value: hour * HOUR + Number(minutes ?? 0) * MINUTE } : { refused: say("read_clock") };
}

/** @param {string} words @param {number} before @param {Record<string, Unit>} units @returns {Typed} */
function readSpan(words, before, units) {
  const clock = /^(\d+):(\d{2})$/.exec(words);
  if (clock) return { value: (Number(clock[1]) * 60 + Number(clock[2])) * (spanUnit(before) === HOUR ? MINUTE : 1) };
  const bare = readNumber(words);
  if (bare !== null) return { value: bare * spanUnit(before) };
  const pieces = [...words.matchAll(/([\d.,]+)\s*([a-z]+)/gi)];
  if (!pieces.length || pieces.map(([piece]) => piece).join("").replace(/\s/g, "") !== words.replace(/\s/g, "")) {
    return { refused: say("read_number", { text: words }) };
  }
  let value = 0;
  for (const [, digits, unit] of pieces) {
    const number = readNumber(digits);
    const meant = SHORT.get(unit.toLowerCase()) ?? unit;
    const size = Object.entries(SPANS).find(([name]) => isCalled(units[name], name, meant))?.[1];
    if (number === null || !size) return { refused: say("read_unit", { text: unit, units: "s, min, h" }) };
    value += number * size;
  }
  return { value };
}

/**
 * @param {string} words @param {Measure} measure @param {Record<string, Unit>} units @param {System} system
 * @returns {Typed}
 */
function readMeasured(words, measure, units, system) {
  const parts = /^([$€£]?)\s*([+\-−]?[\d.,\s\u00a0]*\d[.,]?)\s*(.*)$/u.exec(words);
  if (!parts) return { refused: say("read_number", { text: words }) };
  const number = readNumber(parts[2]);
  if (number === null) return { refused: say(/,/.test(parts[2]) ? "read_comma" : "read_number", { text: parts[2] }) };
  const known = [measure[system].unit, measure.us.unit, measure.metric.unit];
  const unit = parts[3] ? known.find((each) => isCalled(units[each], each, parts[3])) : known[0];
  if (!unit) return { refused: say("read_unit", { text: parts[3], units: [...new Set(known.map((each) => units[each].symbol || each))].join(", ") }) };
  return { value: toSi(number, units[unit]) };
}

/** Whether a unit goes by that name, as content has them; a degree sign, a dot or capitals are not asked for. @param {Unit} unit @param {string} text @param {string} name */
function isCalled(unit, text, name) {
  const bare = (/** @type {string} */ word) => word.toLowerCase().replace(/[°\s.]/g, "");
  return [unit.symbol, unit.plural, text, ...unit.also].some((word) => word && bare(word) === bare(name));
}

/** The next neat value up or down. @param {number} value @param {1 | -1} way @param {string} id @param {Formulas} formulas @param {System} system */
export function stepped(value, way, id, formulas, system) {
  const { step, whole } = formulas.inputs[id];
  const measure = formulas.measures[formulas.measureOf[id]];
  if (measure.form === "clock") return toGrid(value, way, 5 * MINUTE);
  if (measure.form === "duration") return toGrid(value, way, step ?? { 1: 5, [MINUTE]: MINUTE, [HOUR]: 15 * MINUTE }[spanUnit(value)] ?? 1);
  const { unit, digits } = measure[system];
  const shown = formulas.units[unit];
  const grid = step ? neat(step / shown.factor) : whole ? 1 : 10 ** -(formulas.digitsOf[id] ?? digits);
  return toSi(toGrid(fromSi(value, shown), way, grid), shown);
}

/** @param {number} value @param {1 | -1} way @param {number} grid */
function toGrid(value, way, grid) {
  const places = value / grid;
  const next = way > 0 ? Math.floor(places + 1e-6) + 1 : Math.ceil(places - 1e-6) - 1;
  return Number((next * grid).toPrecision(12));
}
