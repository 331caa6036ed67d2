/**
 * A plan as a short text for links and codes, and back again. Nothing in a text is believed before it is checked.
 *
 *     1~seal~site~name~change~change...
 *
 * `seal` is a sum over all that follows it, `site` one over the plan that the changes are changes to. A change is four
 * letters that stand for the input and then its SI value, or `=` and an option.
 *
 * @typedef {number | string} Value
 * @typedef {Record<string, Value>} Changes
 * @typedef {{inputs: Record<string, import("./settling.js").Input>, choices: Record<string, import("./settling.js").Choice>,
 *   settle: (changes: Changes) => Changes}} Known
 * @typedef {{name: string, changes: Changes, same: boolean}} Passed  `same`: this phone starts from the same plan
 * @typedef {{refused: string, parts?: Record<string, string>}} Refused  the id of a sentence, and what stands in it
 */

import { tidy } from "./typed_text.js";

const VERSION = "1";
const FIGURES = 8;
const LONGEST = 8000;
const NAME = 40;
const LETTERS = "abcdefghijklmnopqrstuvwxyz234567";

/** A sum over a text in letters (Fowler, Noll and Vo). @param {string} text @param {number} length */
export function sum(text, length) {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  hash ^= hash >>> 12;
  return Array.from({ length }, (_, place) => LETTERS[(hash >>> (5 * place)) & 31]).join("");
}

/** The inputs and choices by their four letters; where two share them, both go by their whole id. @param {Known} known */
function shortNames({ inputs, choices }) {
  /** @type {Map<string, string>} */ const ids = new Map();
  for (const id of [...Object.keys(inputs), ...Object.keys(choices)]) ids.set(sum(id, 4), ids.has(sum(id, 4)) ? "" : id);
  return ids;
}

/** What the changes are changes to. @param {Known} known */
const siteOf = ({ settle }) => sum(JSON.stringify(Object.entries(settle({})).sort()), 4);

/** @param {string} name */
const tidyName = (name) => tidy(name, NAME);

/** @param {string} name @param {Changes} changes @param {Known} known */
export function writePlan(name, changes, known) {
  const short = shortNames(known);
  const rows = Object.entries(changes).sort(([one], [other]) => (one < other ? -1 : 1)).map(([id, value]) => {
    const key = short.get(sum(id, 4)) === id ? sum(id, 4) : `${id}:`;
    return key + (typeof value === "number" ? String(Number(value.toPrecision(FIGURES))) : `=${value}`);
  });
  const escaped = encodeURIComponent(tidyName(name)).replace(/[!'()*~]/g, (letter) => `%${letter.charCodeAt(0).toString(16).toUpperCase()}`);
  const body = [siteOf(known), escaped, ...rows].join("~");
  return `${VERSION}~${sum(body, 6)}~${body}`;
}

/** @param {string} text @param {Known} known @returns {Passed | Refused} */
export function readPlan(text, known) {
  const version = /^(\d{1,4})~/.exec(text);
  if (!version || text.length > LONGEST) return { refused: "pass_none" };
  if (version[1] !== VERSION) return { refused: "pass_version" };
  const [, seal, ...parts] = text.split("~");
  if (parts.length < 2 || seal !== sum(parts.join("~"), 6)) return { refused: "pass_damaged" };
  const [site, escaped, ...rows] = parts;
  const name = unescaped(escaped);
  if (name === null) return { refused: "pass_damaged" };
  const short = shortNames(known);
  /** @type {[string, Value][]} */ const read = [];
  for (const row of rows) {
    const found = /^(?:([a-z2-7]{4})|([a-z][a-z0-9_]*):)(?:(-?\d+(?:\.\d+)?(?:e-?\d{1,2})?)|=([a-z][a-z0-9_]*))$/.exec(row);
    if (!found) return { refused: "pass_damaged" };
    const id = found[2] ?? short.get(found[1]);
    if (!id) return { refused: "pass_unknown" };
    read.push([id, found[4] ?? Number(found[3])]);
  }
  return checked(name, read, site === siteOf(known), known);
}

/** @param {string} escaped */
function unescaped(escaped) {
  try {
    return tidyName(decodeURIComponent(escaped));
  } catch {
    return null;
  }
}

/**
 * The changes, if all of them are such as the fields of the plan would take.
 * @param {string} name @param {[string, unknown][]} read @param {boolean} same @param {Known} known @returns {Passed | Refused}
 */
function checked(name, read, same, { inputs, choices }) {
  /** @type {Changes} */ const changes = {};
  for (const [id, value] of read) {
    if (Object.hasOwn(changes, id)) return { refused: "pass_damaged" };
    if (Object.hasOwn(choices, id)) {
      if (typeof value !== "string" || !Object.hasOwn(choices[id].options, value)) return { refused: "pass_option", parts: { id } };
      changes[id] = value;
    } else if (Object.hasOwn(inputs, id)) {
      const fitting = typeof value === "number" ? fit(value, inputs[id]) : null;
      if (fitting === null) return { refused: "pass_range", parts: { id } };
      changes[id] = fitting;
    } else return { refused: "pass_unknown" };
  }
  return { name, changes, same };
}

/** A value inside the range; one that rounding has pushed over its edge goes back to the edge. @param {number} value @param {import("./settling.js").Input} input */
function fit(value, { low, high, whole }) {
  const slack = 1e-7 * Math.max(Math.abs(low), Math.abs(high));
  if (!(value >= low - slack && value <= high + slack) || (whole && !Number.isInteger(value))) return null;
  return Math.min(high, Math.max(low, value));
}

/** @param {string} name @param {Changes} changes @param {Known} known */
export function writePlanFile(name, changes, known) {
  return `${JSON.stringify({ plan_file: Number(VERSION), name: tidyName(name), site: siteOf(known), changes }, null, 1)}\n`;
}

/** @param {string} text @param {Known} known @returns {Passed | Refused} */
export function readPlanFile(text, known) {
  let file;
  try {
    file = JSON.parse(text.slice(0, 10 * LONGEST));
  } catch {
    return { refused: "pass_no_file" };
  }
  if (typeof file !== "object" || file === null || !("plan_file" in file)) return { refused: "pass_no_file" };
  if (String(file.plan_file) !== VERSION) return { refused: "pass_version" };
  const { name, site, changes } = file;
  if (typeof name !== "string" || typeof changes !== "object" || changes === null) return { refused: "pass_damaged" };
  return checked(tidyName(name), Object.entries(changes), site === siteOf(known), known);
}

/** Whether two values of an input are the same, as far as a code tells them apart. @param {Value} one @param {Value} other */
export function isSame(one, other) {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= 1e-7 * Math.max(Math.abs(one), Math.abs(other));
}
