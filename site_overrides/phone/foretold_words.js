// What was foretold, in words.

import { tell } from "./log_words.js";
import { clock, span } from "./words_said.js";

/** @param {import("./foretelling.js").Foretold} foretold @param {import("./log_words.js").Teller} teller @param {string} of @param {string} name */
export function sayForetold({ kind, limit, at, by }, teller, of, name) {
  const parts = { name, limit: teller.value(of, limit), time: at ? clock(at) : "", by: by ? clock(by) : "" };
  if (kind === "in_time") return tell("foretold", { ...parts, span: span((Number(at) - Date.now()) / 1000) });
  return tell(`foretold_${kind}`, parts);
}
