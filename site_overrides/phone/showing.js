/**
 * Values as a person reads them. `generator/units/showing.py` is the same, line for line.
 *
 * @typedef {"us" | "metric"} System
 * @typedef {{unit: string, digits: number}} Shown
 * @typedef {{form: string, us: Shown, metric: Shown}} Measure
 * @typedef {{symbol: string, plural: string, pattern: string, factor: number, offset: number}} Unit
 */

const NO_BREAK = "\u00a0";
const MINUS = "\u2212";
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/**
 * The functions that show values, for the measures and units of formulas.js.
 * @param {Record<string, Measure>} measures @param {Record<string, Unit>} units
 * @param {Record<string, string>} [translated] English words and symbols to those of the page's language
 */
export function showing(measures, units, translated = {}) {
  /** @param {string} english */
  const translate = (english) => translated[english] ?? english;

  /** An SI value in the unit that the system uses for the measure. @param {number} value @param {string} measureId @param {System} system @param {number | null} [digits] */
  function show(value, measureId, system, digits = null) {
    const measure = measures[measureId];
    if (measure.form === "clock") return showClock(value, translate);
    if (measure.form === "duration") return showDuration(value, digits ?? 0, translate);
    const shown = measure[system];
    const number = writeNumber(fromSi(value, units[shown.unit]), digits ?? shown.digits);
    return withUnit(number, units[shown.unit], translate);
  }

  /** The value in the first system, and in brackets in the other where that reads differently. @param {number} value @param {string} measureId @param {System} first @param {number | null} [digits] */
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
  const digits = text.replace(/[\s\u00a0\u2009\u202f]/g, "").replace(MINUS, "-");
  if (/^-?[1-9]\d{0,2}(,\d{3})+$/.test(digits) || !/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(digits)) return null;
  return Number(digits.replace(",", "."));
}

/** Round half up to so many decimals; thousands stand apart from 10 000 on. @param {number} number @param {number} digits */
export function writeNumber(number, digits) {
  const scaled = Math.floor(number * Number(`1e${digits}`) + 0.5);
  return (scaled < 0 ? MINUS : "") + placePoint(Math.abs(scaled), digits);
}

/** A number by its leading figures, for a working: `333 550`, `0.0125`, `5.67×10⁻⁸`. @param {number} value @param {number} [figures] */
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

/** @param {number} scaled @param {number} digits */
function placePoint(scaled, digits) {
  const text = BigInt(scaled).toString().padStart(digits + 1, "0");
  let whole = text.slice(0, text.length - digits);
  if (whole.length > 4) whole = whole.replace(/(?<=\d)(?=(\d{3})+$)/g, NO_BREAK);
  return digits ? `${whole}.${text.slice(-digits)}` : whole;
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

/** @param {number} value @param {(english: string) => string} translate */
function showClock(value, translate) {
  const minutes = Math.floor(value / 60 + 0.5);
  const day = Math.floor(minutes / 1440);
  const inDay = minutes - day * 1440;
  const time = `${Math.floor(inDay / 60)}:${twoDigits(inDay % 60)}`;
  if (day === 0) return time;
  const words = { "-1": "the day before", 1: "next day" }[day] ?? (day < 0 ? "{days} days before" : "{days} days after");
  return `${time} ${translate(words).replace("{days}", String(Math.abs(day)))}`;
}

/** Seconds under two minutes, minutes under two hours, days from two days on; seconds count under ten minutes. @param {number} value @param {number} digits @param {(english: string) => string} translate */
function showDuration(value, digits, translate) {
  const seconds = Math.floor(Math.abs(value) + 0.5);
  const minutes = Math.floor(Math.abs(value) / 60 + 0.5);
  const hours = Math.floor(Math.abs(value) / 3600 + 0.5);
  let sign = value < 0 && seconds > 0 ? MINUS : "";
  let text;
  if (seconds < 120) {
    text = `${writeNumber(Math.abs(value), digits)} ${translate("s")}`;
    sign = value < 0 && /[1-9]/.test(text) ? MINUS : "";
  } else if (seconds < 600 && seconds % 60) {
    text = `${Math.floor(seconds / 60)} ${translate("min")} ${twoDigits(seconds % 60)} ${translate("s")}`;
  } else if (minutes < 120) {
    text = `${minutes} ${translate("min")}`;
  } else if (minutes < 2880) {
    text = `${Math.floor(minutes / 60)} ${translate("h")} ${twoDigits(minutes % 60)} ${translate("min")}`;
  } else {
    const words = translate(hours % 24 ? "{days} days {hours} h" : "{days} days");
    text = words.replace("{days}", String(Math.floor(hours / 24))).replace("{hours}", String(hours % 24));
  }
  return sign + text.replaceAll(" ", NO_BREAK);
}

/** @param {number} number */
function twoDigits(number) {
  return String(number).padStart(2, "0");
}
