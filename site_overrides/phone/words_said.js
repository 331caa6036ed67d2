// Words of the interface, from the build, with their parts put in.

import { words } from "./words.js";
import { showClock } from "./writing.js";

/** @typedef {Record<string, string | number>} Parts */

/** A sentence with its parts put in; what is not given stays as it is. @param {string} text @param {Parts} parts */
export const filled = (text, parts) => text.replace(/\{(\w+)\}/g, (whole, name) => String(parts[name] ?? whole));

/** @param {string} id @param {Parts} [parts] */
export const say = (id, parts = {}) => filled(words[id], parts);

const language = document.documentElement.lang || undefined;
const day = new Intl.DateTimeFormat(language, { weekday: "short", day: "numeric", month: "long" });

/** A time of day, as the plan writes it. @param {number} when */
export function clock(when) {
  const at = new Date(when);
  return showClock((at.getHours() * 60 + at.getMinutes()) * 60, String);
}

/** A day. @param {number} when */
export const date = (when) => day.format(when);

/** A time of day, with its date where that is not today's. @param {number} when */
export const moment = (when) => (new Date(when).toDateString() === new Date().toDateString() ? clock(when) : `${date(when)}, ${clock(when)}`);

/** Minutes and seconds of a span; it is never negative. @param {number} seconds */
export function span(seconds) {
  const whole = Math.max(0, Math.floor(seconds));
  const rest = String(whole % 60).padStart(2, "0");
  const all = Math.floor(whole / 60);
  return all < 60 ? `${all}:${rest}` : `${Math.floor(all / 60)}:${String(all % 60).padStart(2, "0")}:${rest}`;
}
