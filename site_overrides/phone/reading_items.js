/**
 * What a reading is, and what is offered for one tap.
 *
 * @typedef {{act: string, actions: Record<string, string>}} Remedy
 * @typedef {object} Reading
 * @property {string} title
 * @property {string} phase
 * @property {number} order
 * @property {true} [ahead]  done ahead of the day that it is for
 * @property {string} [help]
 * @property {string} [named]  what one asks for the name of the thing read
 * @property {string} [one]  what stands before that name
 * @property {Remedy} [too_low]
 * @property {Remedy} [too_high]
 * @property {Remedy} [too_slow]
 * @property {Record<string, string>} [reasons]
 * @property {string} [own_words]  the reason that is told in words of one's own
 * @property {{toward?: string, otherwise: string}} [curve]
 * @property {string} [measure]
 * @property {[number, number]} [range]
 * @property {number} [step]
 * @property {boolean} [adds_up]
 * @property {boolean} [whole]
 * @property {string} [at_most]
 * @property {boolean} [none_if_silent]
 * @property {boolean} [per_lot]
 * @property {string} [low]
 * @property {string} [high]
 * @property {string} [since]
 * @property {string[]} [until]
 * @property {string} [within]
 * @property {string} [rhythm]
 */

const OFFERED = 5;
const COUNTS = [1, 2, 5, 10, 20];

/** What kind of entry it makes. @param {Reading} reading @returns {"mark" | "count" | "reading"} */
export const kindOf = (reading) => (!reading.measure ? "mark" : reading.adds_up ? "count" : "reading");

/**
 * Values for one tap: round ones about the last reading, or about the limits where there is none yet; of things that
 * add up a few small ones.
 * @param {{last?: number, low?: number, high?: number, step: number, range: [number, number], counts: boolean}} about  all in the unit shown
 * @returns {number[]}
 */
export function offered({ last, low, high, step, range, counts }) {
  const neat = (/** @type {number} */ value) => Number((Math.round(value / step) * step).toPrecision(12));
  const fits = (/** @type {number} */ value) => value >= range[0] && value <= range[1];
  if (counts) return COUNTS.map((count) => Number((count * step).toPrecision(12))).filter(fits);
  const middle = last ?? (low !== undefined && high !== undefined ? (low + high) / 2 : low ?? high);
  if (middle === undefined) return [];
  const places = Array.from({ length: OFFERED }, (_, place) => neat(neat(middle) + (place - (OFFERED - 1) / 2) * step));
  return places.filter(fits);
}

/** A key of the keypad put to what is typed. @param {string} typed @param {string} key  a digit, `.`, `-` or `back` */
export function press(typed, key) {
  if (key === "back") return typed.slice(0, -1);
  if (key === "-") return typed.startsWith("-") ? typed.slice(1) : `-${typed}`;
  if (key === "." && typed.includes(".")) return typed;
  return typed.length < 9 ? (typed === "0" && key !== "." ? key : typed + key) : typed;
}
