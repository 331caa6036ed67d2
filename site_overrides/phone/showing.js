/**
 * Values as a person reads them. `generator/units/showing.py` is the same, line for line.
 *
 * @typedef {"us" | "metric"} System
 * @typedef {{unit: string, digits: number}} Shown
 * @typedef {{unit: string, form: string, us: Shown, metric: Shown}} Measure  `unit` in SI
 * @typedef {{symbol: string, plural: string, pattern: string, factor: number, offset: number, also: string[]}} Unit
 */

import { MINUS, NO_BREAK, placePoint, showClock, showDuration, writeNumber } from "./writing.js";

export { writeNumber };

/** Thousands apart by spaces; JavaScript's `\s` has all of them, also those that do not break. */
const GROUPED = /^\s*[+\-\u2212]?\s*\d{1,3}(\s\d{3})+([.,]\d*)?\s*$/;
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/**
 * The functions that show values, for the measures and units of formulas.js.
 * @param {Record<string, Measure>} measures @param {Record<string, Unit>} units
 * @param {Record<string, string>} [translated] English words and symbols to those of the page's language
 */
export function showing(measures, units, translated = {}) {
  /** @param {string} english */
  const translate = (english) => translated[english] ?? english;

  /**
   * An SI value in the unit that the system uses for the measure.
   * @param {number} value @param {string} measureId @param {System} system @param {number | null} [digits]
   */
  function show(value, measureId, system, digits = null) {
    const measure = measures[measureId];
    if (measure.form === "clock") return showClock(value, translate);
    if (measure.form === "duration") return showDuration(value, digits ?? 0, translate);
    const shown = measure[system];
    const number = writeNumber(fromSi(value, units[shown.unit]), digits ?? shown.digits);
    return withUnit(measure.form === "parts" ? withoutIdleZeros(number) : number, units[shown.unit], translate);
  }

  /**
   * The value in the first system, and in brackets in the other where that reads differently.
   * @param {number} value @param {string} measureId @param {System} first @param {number | null} [digits]
   */
  function showBoth(value, measureId, first, digits = null) {
    const one = show(value, measureId, first, digits);
    const other = show(value, measureId, first === "us" ? "metric" : "us", digits);
    return one === other ? one : `${one} (${other})`;
  }

  return { show, showBoth };
}

/** The number of such units. @param {number} value @param {Unit} unit */
export function fromSi(value, unit) {
  return (value - unit.offset) / unit.factor;
}

/** @param {number} number @param {Unit} unit */
export function toSi(number, unit) {
  return number * unit.factor + unit.offset;
}

/**
 * A number as people type it, with a point or a comma before its decimals; null where it is none, or where a comma may
 * mean thousands.
 * @param {string} text
 */
export function readNumber(text) {
  if (/\d\s\d/.test(text) && !GROUPED.test(text)) return null;
  const digits = text.replace(/\s/g, "").replace(MINUS, "-");
  if (/^[+-]?[1-9]\d{0,2}(,\d{3})+$/.test(digits) || !/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(digits)) return null;
  return Number(digits.replace(",", "."));
}

/**
 * A number by its leading figures, for a working: `333 550`, `0.0125`, `5.67×10⁻⁸`.
 * @param {number} value @param {number} [figures]
 */
export function plainly(value, figures = 6) {
  if (value === 0) return "0";
  const size = Math.abs(value);
  let power = Math.floor(Math.log10(size));
  let scaled = leading(size, power, figures);
  if (scaled >= 10 ** figures || scaled < 10 ** (figures - 1)) {
    power += scaled >= 10 ** figures ? 1 : -1;
    scaled = leading(size, power, figures);
  }
  const sign = value < 0 ? MINUS : "";
  if (power > -5 && power < 9) {
    const decimals = figures - 1 - power;
    const whole = scaled * 10 ** Math.max(0, -decimals);
    return sign + withoutIdleZeros(placePoint(whole, Math.max(0, decimals)));
  }
  const raised = String(power).replace("-", "⁻").replace(/\d/g, (digit) => RAISED[Number(digit)]);
  return `${sign}${withoutIdleZeros(placePoint(scaled, figures - 1))}×10${raised}`;
}

/** @param {number} size @param {number} power @param {number} figures */
function leading(size, power, figures) {
  const shift = figures - 1 - power;
  return Math.floor((shift >= 0 ? size * Number(`1e${shift}`) : size / Number(`1e${-shift}`)) + 0.5);
}

/** @param {string} text */
function withoutIdleZeros(text) {
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** @param {string} number @param {Unit} unit @param {(english: string) => string} translate */
function withUnit(number, unit, translate) {
  if (unit.pattern) {
    const [sign, size] = number.startsWith(MINUS) ? [MINUS, number.slice(1)] : ["", number];
    return sign + translate(unit.pattern).replace("#", () => size);
  }
  const symbol = number === "1" || number === `${MINUS}1` || !unit.plural ? unit.symbol : unit.plural;
  return symbol ? `${number}${NO_BREAK}${translate(symbol)}` : number;
}
