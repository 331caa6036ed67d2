/**
 * A record as a table for spreadsheets: comma-separated, one entry a row, text that could be taken for a formula made
 * harmless.
 *
 * @typedef {import("./records.js").Entry} Entry
 */

import { judge } from "./judging.js";
import { inOrder, standing } from "./records.js";

export const COLUMNS = [
  "time", "made", "run", "kind", "lot", "of", "name", "written", "value_si", "low_si", "high_si", "verdict", "counts", "who",
  "reason", "text", "id", "corrects", "answers",
];

/** @param {Entry[]} entries */
export function toTable(entries) {
  const counted = new Set(standing(entries));
  const rows = inOrder(entries).map((entry) => COLUMNS.map((column) => cell(column, entry, counted.has(entry))));
  return [COLUMNS, ...rows].map((row) => `${row.map(quoted).join(",")}\r\n`).join("");
}

/** @param {string} column @param {Entry} entry @param {boolean} counts @returns {string} */
function cell(column, entry, counts) {
  if (column === "time") return localTime(entry.at, entry.zone);
  if (column === "made") return entry.made === undefined ? "" : localTime(entry.made, entry.zone);
  if (column === "value_si") return String(entry.value ?? "");
  if (column === "low_si") return String(entry.limit?.low ?? "");
  if (column === "high_si") return String(entry.limit?.high ?? "");
  if (column === "verdict") return entry.value === undefined ? "" : judge(entry.value, entry.limit, entry.at);
  if (column === "counts") return counts ? "yes" : "no";
  return harmless(String(/** @type {Record<string, unknown>} */ (entry)[column] ?? ""));
}

/** The wall clock of the phone. @param {number} at @param {number} zone  minutes ahead of UTC */
export const localTime = (at, zone) => new Date(at + zone * 60_000).toISOString().slice(0, 19).replace("T", " ");

/** @param {string} text */
const harmless = (text) => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

/** @param {string} text */
const quoted = (text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
