// Words for programs about teaching.

import { words } from "./teaching.js";

/** @param {string} id @param {Record<string, string | number>} [parts] */
export function tell(id, parts = {}) {
  return words[id].replace(/\{(\w+)\}/g, (whole, name) => String(parts[name] ?? whole));
}
