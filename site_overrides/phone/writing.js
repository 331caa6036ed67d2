/** Digits, times of day and times taken, in writing. `generator/units/writing.py` is the same. */

export const NO_BREAK = "\u00a0";
export const MINUS = "\u2212";

/**
 * Round half up to so many decimals; thousands stand apart from 10 000 on.
 * @param {number} number @param {number} digits
 */
export function writeNumber(number, digits) {
  const scaled = Math.floor(number * Number(`1e${digits}`) + 0.5);
  return (scaled < 0 ? MINUS : "") + placePoint(Math.abs(scaled), digits);
}

/** @param {number} scaled @param {number} digits */
export function placePoint(scaled, digits) {
  const text = BigInt(scaled).toString().padStart(digits + 1, "0");
  let whole = text.slice(0, text.length - digits);
  if (whole.length > 4) whole = whole.replace(/\B(?=(\d{3})+$)/g, NO_BREAK);
  return digits ? `${whole}.${text.slice(-digits)}` : whole;
}

/** @param {number} value @param {(english: string) => string} translate */
export function showClock(value, translate) {
  const minutes = Math.floor(value / 60 + 0.5);
  const day = Math.floor(minutes / 1440);
  const inDay = minutes - day * 1440;
  const time = `${Math.floor(inDay / 60)}:${twoDigits(inDay % 60)}`;
  if (day === 0) return time;
  const far = day < 0 ? "{days} days before" : "{days} days after";
  const words = { "-1": "the day before", 1: "next day" }[day] ?? far;
  return `${time} ${translate(words).replace("{days}", String(Math.abs(day)))}`;
}

/**
 * Seconds under two minutes, minutes under two hours, days from two days on; seconds count under ten minutes.
 * @param {number} value @param {number} digits @param {(english: string) => string} translate
 */
export function showDuration(value, digits, translate) {
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
