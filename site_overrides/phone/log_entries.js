// What was written down, the latest first; corrections name what they stand for.

import { element } from "./element.js";
import { isOpen } from "./correcting.js";
import { isOutside, madeWords, tell, thingOf, titleOf, verdictOf } from "./log_words.js";
import { phoneOf } from "./records.js";
import { moment } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page @typedef {import("./records.js").Entry} Entry @typedef {import("./log_words.js").Teller} Teller */

const LISTED = ["reading", "count", "mark", "remark", "action", "sign", "merge"];

/** @param {Page} page @param {Teller} teller @param {HTMLElement} place @param {number} most @returns {boolean} whether there are more */
export function paintEntries(page, teller, place, most) {
  const index = page.log.of(page.run());
  const standing = index.standing();
  /** @type {Entry[]} */ const shown = [];
  let left = standing.length;
  while (left > 0 && shown.length < most) {
    left -= 1;
    if (LISTED.includes(standing[left].kind)) shown.push(standing[left]);
  }
  const before = new Map([...place.children].map((row) => [/** @type {HTMLElement} */ (row).dataset.entry, row]));
  const wanted = new Set(shown.map(({ corrects }) => corrects).filter(Boolean));
  const replaced = new Map(wanted.size ? index.all().filter(({ id }) => wanted.has(id)).map((entry) => [entry.id, entry]) : []);
  place.replaceChildren(...shown.map((entry) => before.get(keyFor(page, entry)) ?? rowOf(page, teller, entry, replaced.get(entry.corrects ?? ""))));
  return left > 0;
}

/** A row is made again when the day is closed, for it can no longer be corrected then. @param {Page} page @param {Entry} entry */
const keyFor = (page, entry) => `${entry.id} ${isOpen(page, entry)}`;

/** @param {Page} page @param {Teller} teller @param {Entry} entry @param {Entry} [instead] */
function rowOf(page, teller, entry, instead) {
  const words = element("span", { class: "entry__words" }, element("strong", {}, entryTitle(entry)), " ", ...whatItSays(teller, entry));
  if (instead) words.append(" ", element("span", { class: "quiet" }, `(${tell("instead", { value: teller.written(instead) })})`));
  const about = [moment(entry.at), madeWords(entry), entry.lot && tell("lot", { lot: entry.lot }), entry.who ?? tell("by_phone", { phone: phoneOf(entry) })].filter(Boolean).join(" · ");
  const row = element("li", { class: "entry", "data-entry": keyFor(page, entry), "data-verdict": entry.value === undefined ? "none" : verdictOf(entry) }, words, element("span", { class: "entry__about" }, about));
  if (isOpen(page, entry)) {
    const button = element("button", { type: "button", class: "button button--small", "aria-label": `${tell("correct")}: ${entryTitle(entry)} ${teller.written(entry)}` }, tell("correct"));
    button.addEventListener("click", async () => (await import("./correcting.js")).openCorrection(page, entry));
    row.append(button);
  }
  return row;
}

/** @param {Entry} entry */
export function entryTitle(entry) {
  if (entry.kind === "sign") return tell("signed", { who: entry.who ?? "" });
  if (entry.kind === "merge") return tell("took", { count: entry.taken ?? 0, phone: entry.phone ?? "" });
  if (entry.kind === "action") return tell("did", { text: entry.text ?? "" });
  return entry.of ? [titleOf(entry.of), thingOf(entry)].filter(Boolean).join(", ") : "";
}

/** @param {Teller} teller @param {Entry} entry @returns {(Node | string)[]} */
function whatItSays(teller, entry) {
  if (entry.kind === "action" || entry.kind === "merge") return [];
  if (entry.value === undefined) return [entry.text ?? ""];
  const verdict = verdictOf(entry);
  const limit = teller.limit(entry.of ?? "", entry.limit);
  const judged = verdict === "free" ? [] : [" ", element("span", { class: isOutside(entry) ? "verdict verdict--outside" : "verdict" }, tell(verdict)), ` ${limit}`];
  return [teller.written(entry), ...judged];
}
