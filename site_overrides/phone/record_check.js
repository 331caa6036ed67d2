/**
 * A record file from elsewhere, taken in as far as it is sound. Nothing in it is trusted: size, shape, lengths,
 * numbers, times and hidden characters are checked against the schema, readings against what can be at all.
 * Each refusal has a code, and `say("record_fault_" + code, { at })` tells it.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {object} Schema  the part of JSON Schema that the record's schema is written in
 * @property {string | string[]} [type]
 * @property {unknown} [const]
 * @property {unknown[]} [enum]
 * @property {string} [pattern]
 * @property {number} [minLength]
 * @property {number} [maxLength]
 * @property {number} [minimum]
 * @property {number} [maximum]
 * @property {string[]} [required]
 * @property {number} [maxProperties]
 * @property {Record<string, Schema>} [properties]
 * @property {{pattern: string}} [propertyNames]
 * @property {false | Schema} [additionalProperties]
 * @property {{if: Condition, then: Schema}[]} [allOf]
 * @typedef {{required?: string[], properties?: Record<string, {const: unknown}>}} Condition
 * @typedef {{code: string, at: string, entry: number}} Fault  the entry's place in the file from 1; 0 means the whole file
 * @typedef {{phone: string, clock: number, entries: Entry[], faults: Fault[], refused: number}} Taken
 */

import { liesWithin } from "./ranges.js";
import { format } from "./record_format.js";

const MOST_CHARACTERS = 16_000_000;
const MOST_FAULTS = 50;

/**
 * What can be taken from a file's text. Where the file as a whole is refused there are no entries and one fault.
 * @param {string} text @param {Record<string, [number, number]>} ranges  what each reading can be, in SI units
 * @returns {Taken}
 */
export function takeFile(text, ranges) {
  if (text.length > MOST_CHARACTERS) return refuse("too_big");
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    return refuse("not_json");
  }
  const code = whatIsWrong(file);
  if (code) return refuse(code);
  /** @type {Taken} */ const taken = { phone: file.phone, clock: file.clock, entries: [], faults: [], refused: 0 };
  file.entries.forEach((/** @type {unknown} */ entry, /** @type {number} */ place) => {
    const fault = faultOf(entry, format.$defs.entry, "entry") ?? outOfReach(/** @type {Entry} */ (entry), ranges);
    if (!fault) return taken.entries.push(/** @type {Entry} */ (entry));
    taken.refused += 1;
    if (taken.faults.length < MOST_FAULTS) taken.faults.push({ ...fault, entry: place + 1 });
  });
  return taken;
}

/** @param {string} code @returns {Taken} */
const refuse = (code) => ({ phone: "", clock: 0, entries: [], faults: [{ code, at: "", entry: 0 }], refused: 0 });

/** Why the file as a whole is not taken. @param {any} file */
function whatIsWrong(file) {
  if (kindOf(file) !== "object" || file.format !== format.properties.format.const) return "not_ours";
  if (kindOf(file.version) === "integer" && file.version > Math.max(...format.properties.version.enum)) return "newer";
  if (Array.isArray(file.entries) && file.entries.length > format.properties.entries.maxItems) return "too_many";
  return faultOf({ ...file, entries: [] }, format, "") || !Array.isArray(file.entries) ? "bad_head" : null;
}

/** @param {Entry} entry @param {Record<string, [number, number]>} ranges */
function outOfReach({ id, of, value, corrects }, ranges) {
  if (corrects === id) return { code: "corrects_itself", at: "corrects" };
  if (of === undefined || value === undefined || !Object.hasOwn(ranges, of)) return null;
  return liesWithin(value, ranges[of]) ? null : { code: "impossible", at: "value" };
}

/** @param {unknown} value */
function kindOf(value) {
  if (value === null) return "null";
  if (Array.isArray(value)) return "array";
  return typeof value === "number" && Number.isInteger(value) ? "integer" : typeof value;
}

/**
 * The first way in which a value breaks the part of JSON Schema that the record's schema is written in.
 * @param {any} value @param {Schema} schema @param {string} at @returns {{code: string, at: string} | null}
 */
export function faultOf(value, schema, at) {
  const kind = kindOf(value);
  if ("const" in schema && value !== schema.const) return { code: "not_listed", at };
  if (schema.enum && !schema.enum.includes(value)) return { code: "not_listed", at };
  if (schema.type && !allowed(kind, [schema.type].flat())) return { code: "wrong_type", at };
  if (kind === "string") return faultOfText(value, schema, at);
  if (kind === "integer" || kind === "number") return faultOfNumber(value, schema, at);
  return kind === "object" ? faultOfObject(value, schema, at) : null;
}

/** @param {string} kind @param {string[]} types */
const allowed = (kind, types) => types.includes(kind) || (kind === "integer" && types.includes("number"));

/** @param {string} text @param {Schema} schema @param {string} at */
function faultOfText(text, schema, at) {
  const length = [...text.slice(0, 2000)].length;
  if (length > (schema.maxLength ?? Infinity)) return { code: "too_long", at };
  if (length < (schema.minLength ?? 0)) return { code: "empty", at };
  return schema.pattern && !new RegExp(schema.pattern, "u").test(text) ? { code: "bad_text", at } : null;
}

/** @param {number} number @param {Schema} schema @param {string} at */
function faultOfNumber(number, schema, at) {
  const fits = number >= (schema.minimum ?? -Infinity) && number <= (schema.maximum ?? Infinity);
  return Number.isFinite(number) && fits ? null : { code: "bad_number", at };
}

/** @param {Record<string, any>} object @param {Schema} schema @param {string} at */
function faultOfObject(object, schema, at) {
  for (const key of schema.required ?? []) if (!Object.hasOwn(object, key)) return { code: "missing", at: key };
  const keys = Object.keys(object);
  if (keys.length > (schema.maxProperties ?? Infinity)) return { code: "too_many_keys", at };
  for (const key of keys) {
    const fault = faultOfKey(key, object[key], schema, at);
    if (fault) return fault;
  }
  for (const { if: condition, then } of schema.allOf ?? []) {
    const fault = applies(object, condition) ? faultOf(object, then, at) : null;
    if (fault) return fault;
  }
  return null;
}

/** Whether a condition holds: it names keys that are there and values that they have. @param {Record<string, any>} object @param {Condition} condition */
function applies(object, condition) {
  const there = (condition.required ?? []).every((/** @type {string} */ key) => Object.hasOwn(object, key));
  return there && Object.entries(condition.properties ?? {}).every(([key, part]) => object[key] === part.const);
}

/** @param {string} key @param {unknown} value @param {Schema} schema @param {string} at */
function faultOfKey(key, value, schema, at) {
  const { properties = {} } = schema;
  if (Object.hasOwn(properties, key)) return faultOf(value, properties[key], key);
  if (schema.propertyNames && !new RegExp(schema.propertyNames.pattern, "u").test(key)) return { code: "unknown_key", at };
  if (schema.additionalProperties === false) return { code: "unknown_key", at };
  return schema.additionalProperties ? faultOf(value, schema.additionalProperties, at) : null;
}
