// A reading with a time allowed says nothing while nobody wrote down when that time began.

import { element } from "./element.js";
import { tell, titleOf } from "./log_words.js";
import { largeButton, openSheet } from "./sheet.js";

/** @typedef {import("./reading_items.js").Reading} Reading @typedef {(of: string, about: {lot?: string, name?: string, startless?: boolean, then?: () => void}) => void} Open */

/** @param {Reading} item @param {Record<string, number | string>} values @param {import("./records.js").Limit} [limit] */
export const lacksStart = ({ within }, values, limit) => typeof values[within ?? ""] === "number" && limit?.by === undefined;

/** @param {Reading} item @param {string} [lot] */
export function startWords({ since, per_lot }, lot) {
  const title = [titleOf(since ?? ""), per_lot && lot && tell("lot", { lot })].filter(Boolean).join(", ");
  return tell("start_first", { title });
}

/** Leads to what is to be written down first, and from there to the reading. @param {Open} openReading @param {string} of @param {Reading} item @param {string} [lot] @param {string} [name] */
export function askForStart(openReading, of, item, lot, name) {
  const sheet = openSheet(item.title, [element("p", { class: "sheet__act" }, startWords(item, lot))]);
  const go = (/** @type {() => void} */ open) => () => {
    sheet.close();
    open();
  };
  const unknown = element("button", { type: "button", class: "button" }, tell("start_unknown"));
  unknown.addEventListener("click", go(() => openReading(of, { lot, name, startless: true })));
  sheet.add(largeButton(titleOf(item.since ?? ""), go(() => openReading(item.since ?? "", { lot, then: () => openReading(of, { lot, name }) }))), unknown);
}
