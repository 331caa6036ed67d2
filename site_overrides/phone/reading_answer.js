// What is answered when something was written down: its verdict, and outside the limits what to do and what was done.

import { element } from "./element.js";
import { foretell, seriesOf, tooSlow } from "./foretelling.js";
import { sayForetold } from "./foretold_words.js";
import { keepAction } from "./keeping_entries.js";
import { items, isOutside, tell, thingOf, titleOf, verdictOf } from "./log_words.js";
import { lacksStart, startWords } from "./reading_start.js";
import { frozenValues } from "./runs.js";
import { openSheet } from "./sheet.js";
import { tidy } from "./typed_text.js";
import { say } from "./words_said.js";

/**
 * @typedef {import("./logging.js").Page} Page
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./log_words.js").Teller} Teller
 */

const SHOWN_FOR = 8000;
let shown = 0;

/** @param {Page} page @param {Teller} teller @param {import("./log.js").Kept} kept @param {import("./sheet.js").Sheet} sheet */
export function answerWith(page, teller, { entry, saved }, sheet) {
  const slow = slowness(page, entry);
  if (isOutside(entry) || slow) return showOutside(page, teller, entry, saved, sheet, slow);
  if (!saved) return sheet.turn(titleOf(entry.of ?? ""), notSaved());
  sheet.close();
  const words = [say("kept_entry", { title: titleOf(entry.of ?? ""), value: teller.written(entry), verdict: tell(verdictOf(entry)) }).replace(/: ,/, ":"), foretoldOf(page, teller, entry)];
  page.strip.show("kept", [{ text: words.filter(Boolean).join(". "), button: say("kept_wrong"), act: () => correct(page, entry) }]);
  const mine = (shown += 1);
  setTimeout(() => mine === shown && page.strip.show("kept", []), SHOWN_FOR);
}

/** @param {Page} page @param {Entry} entry */
async function correct(page, entry) {
  page.strip.show("kept", []);
  (await import("./correcting.js")).openCorrection(page, entry);
}

export const notSaved = () => element("p", { class: "sheet__unsaved", role: "alert" }, tell("not_saved"));

/** @param {Page} page @param {Teller} teller @param {Entry} entry */
function foretoldOf(page, teller, entry) {
  const curve = items[entry.of ?? ""]?.curve;
  if (!curve) return "";
  const values = frozenValues(page.log, entry.run);
  const series = seriesOf(entry.of ?? "", curve, page.log.of(entry.run).standing(), values);
  const mine = series.find(({ lot, name }) => lot === (entry.lot ?? "") && name === (entry.name ?? ""));
  const foretold = mine && foretell(mine.entries, mine.toward);
  return mine && foretold ? sayForetold(foretold, teller, entry.of ?? "", thingOf(mine.entries[0]) || titleOf(entry.of ?? "")) : "";
}

/** What to do, for a reading that waits for it. @param {Page} page @param {Teller} teller @param {Entry} entry */
export function openOutside(page, teller, entry) {
  showOutside(page, teller, entry, true, openSheet(titleOf(entry.of ?? ""), []), slowness(page, entry));
}

/** What is foretold of a reading that will not be there in time. @param {Page} page @param {Entry} entry */
const slowness = (page, entry) => tooSlow(items, page.log.of(entry.run).standing(), frozenValues(page.log, entry.run)).get(entry.id);

/** @param {Page} page @param {Teller} teller @param {Entry} entry @param {boolean} saved @param {import("./sheet.js").Sheet} sheet @param {import("./foretelling.js").Foretold} [slow] */
function showOutside(page, teller, entry, saved, sheet, slow) {
  const item = items[entry.of ?? ""];
  const remedy = item?.[slow ? "too_slow" : verdictOf(entry) === "low" ? "too_low" : "too_high"];
  const values = frozenValues(page.log, entry.run);
  const field = element("input", { type: "text", maxlength: "500", id: "done-other" });
  const keep = element("button", { type: "submit", class: "button" }, tell("done_keep"));
  const other = element("form", { class: "sheet__other" }, element("label", { for: "done-other" }, tell("done_other")), field, keep);
  const done = async (/** @type {string} */ text, /** @type {string} */ reason) => {
    sheet.busy(true);
    const kept = await keepAction(page, entry, text, reason || undefined);
    sheet.busy(false);
    if (kept.saved) sheet.close();
    else sheet.turn(titleOf(entry.of ?? ""), notSaved());
  };
  other.addEventListener("submit", (event) => {
    event.preventDefault();
    const text = tidy(field.value, 500);
    if (text) done(text, "");
    else field.focus();
  });
  const buttons = Object.entries(remedy?.actions ?? {}).map(([reason, text]) => {
    const button = element("button", { type: "button", class: "button button--large" }, text);
    button.addEventListener("click", () => done(text, reason));
    return button;
  });
  const isStartless = item && lacksStart(item, values, entry.limit);
  const start = isStartless ? [element("p", { class: "sheet__act" }, startWords(item, entry.lot))] : [];
  const later = element("button", { type: "button", class: "button" }, tell("later"));
  later.addEventListener("click", () => sheet.close());
  sheet.turn(
    titleOf(entry.of ?? ""),
    ...(saved ? [] : [notSaved()]),
    element("p", { class: "verdict verdict--outside", role: "alert" }, element("strong", {}, tell(slow ? "too_slow" : verdictOf(entry))), ` ${teller.written(entry)} (${teller.limit(entry.of ?? "", entry.limit)})`),
    ...(slow ? [element("p", {}, sayForetold(slow, teller, entry.of ?? "", thingOf(entry) || titleOf(entry.of ?? "")))] : []),
    ...start,
    element("h3", {}, tell("what_to_do")),
    element("p", { class: "sheet__act" }, remedy ? teller.sentence(remedy.act, values) : ""),
    element("p", {}, element("a", { class: "way", href: new URL(`../faults/#for-${entry.of}`, import.meta.url).href }, tell("faults"))),
    element("h3", {}, tell("done")),
    ...buttons, other, later,
  );
}
