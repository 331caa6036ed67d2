// One reading, written down with two taps: the sheet opens over any page, and one tap on an offered value keeps it.

import { chips } from "./chips.js";
import { element } from "./element.js";
import { limitFor } from "./judging.js";
import { keepReading, keepRemark, placeOf } from "./keeping_entries.js";
import { makeKeypad } from "./keypad.js";
import { currentLot, knownLots, nextLot } from "./lots.js";
import { items, makeTeller, tell } from "./log_words.js";
import { markTimes } from "./mark_times.js";
import { neat } from "./neat_steps.js";
import { liesWithin } from "./ranges.js";
import { answerWith } from "./reading_answer.js";
import { totals } from "./records.js";
import { askForStart, lacksStart, startWords } from "./reading_start.js";
import { kindOf, offered } from "./reading_items.js";
import { numbersNow, openRun } from "./runs.js";
import { fromSi, readNumber, toSi, writeNumber } from "./showing.js";
import { largeButton, openSheet } from "./sheet.js";
import { tidy } from "./typed_text.js";
import { clock } from "./words_said.js";

/**
 * @typedef {import("./logging.js").Page} Page
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./keeping_entries.js").Given} Given
 */

/**
 * @param {Page} page @param {string} of
 * @param {{lot?: string, name?: string, instead?: Entry, startless?: boolean, then?: () => void}} [about]  `instead` is the entry that is
 *   corrected; `startless` where nobody knows when it began; `then` follows when it is kept
 */
export async function openReading(page, of, { lot, name, instead, startless, then } = {}) {
  const item = items[of];
  if (!item) return;
  const teller = await makeTeller(page);
  const index = page.log.of(openRun(page.store));
  const values = await numbersNow(page);
  /** @type {Given} */ const given = { lot: instead?.lot ?? lot ?? currentLot(page), name: instead?.name ?? name ?? (item.named && firstName(page, of)), reason: instead?.reason, ...placeOf(instead) };
  const limitNow = () => limitFor(item, values, index.ends(), item.per_lot ? given.lot : undefined);
  if (!instead && !startless && lacksStart(item, values, limitNow())) return askForStart((other, about) => openReading(page, other, about), of, item, given.lot, name);
  const refused = element("p", { class: "sheet__refused", role: "alert", hidden: "" });
  const limitWords = element("p", { class: "sheet__limit" });
  const paintLimit = () => (limitWords.textContent = [teller.limit(of, limitNow()), lacksStart(item, values, limitNow()) && startWords(item, given.lot)].filter(Boolean).join(". "));
  paintLimit();

  const own = element("input", { type: "text", maxlength: "400", autocomplete: "off" });
  const ownLabel = element("label", { class: "sheet__other", hidden: "" }, tell("own_words"), own);
  const choose = (/** @type {string} */ reason) => {
    given.reason = reason;
    ownLabel.hidden = Boolean(instead) || reason !== item.own_words;
    if (!ownLabel.hidden) own.focus();
  };

  const sheet = openSheet(item.title, [
    limitWords,
    ...(item.help ? [element("p", { class: "quiet" }, teller.sentence(item.help, values))] : []),
    ...(instead ? [element("p", {}, tell("correcting", { value: teller.written(instead), time: clock(instead.at) }))] : []),
    ...(item.per_lot ? [lotChips(page, given, paintLimit)] : []),
    ...(item.named ? [nameFields(page, of, item.named, given)] : []),
    ...(item.reasons ? [chips(tell("reason"), Object.entries(item.reasons), given.reason ?? "", choose), ownLabel] : []),
    refused,
  ]);

  /** @param {number} [value] @param {string} [written] @param {number} [at] */
  async function keep(value, written, at) {
    const wrong = whatIsWrong(value, written);
    refused.hidden = !wrong;
    refused.textContent = wrong;
    if (wrong) return refused.scrollIntoView({ block: "nearest" });
    const beyond = value === undefined ? "" : beyondWords(page, teller, of, value, instead);
    if (beyond && !confirm(beyond)) return;
    sheet.busy(true);
    const kept = await keepReading(page, of, item, { ...given, value, written, name: item.named ? given.name : undefined, ...(at === undefined ? {} : { at, zone: undefined }) });
    if (kept && !ownLabel.hidden) kept.saved = (await keepRemark(page, `${item.title}, ${written}: ${tidy(own.value, 400)}`))?.saved === true && kept.saved;
    sheet.busy(false);
    if (kept) answerWith(page, teller, kept, sheet);
    if (kept?.saved) then?.();
  }

  /** @param {number} [value] @param {string} [written] */
  function whatIsWrong(value, written) {
    if (item.named && !given.name) return tell("name_first", { named: item.named });
    if (item.reasons && !given.reason) return tell("reason_first");
    if (!ownLabel.hidden && !tidy(own.value, 400)) return tell("own_words_first");
    if (value !== undefined && item.whole && !Number.isInteger(value)) return tell("whole", { value: written ?? "" });
    if (value === undefined || !item.range || liesWithin(value, item.range)) return "";
    return tell("impossible", { value: teller.value(of, value) });
  }

  if (kindOf(item) === "mark") sheet.add(...markTimes((at) => keep(undefined, undefined, at), refused, instead?.at));
  else addValueFields(item, instead ? undefined : lastOf(index, of, item, given.lot), limitNow(), teller, keep, refused, sheet);
}

/** What is asked where a day's sum would be more than another can allow. @param {Page} page @param {import("./log_words.js").Teller} teller @param {string} of @param {number} value @param {Entry} [instead] */
function beyondWords(page, teller, of, value, instead) {
  const other = items[of].at_most ?? "";
  const sums = totals(page.log.of(openRun(page.store)).standing());
  const sum = (sums[of] ?? 0) - (instead?.value ?? 0) + value;
  if (!(other in sums) || sum <= sums[other]) return "";
  return tell("beyond", { title: items[of].title, sum: teller.value(of, sum), other: items[other].title, most: teller.value(other, sums[other]) });
}

/** @param {import("./log.js").Index} index @param {string} of @param {import("./reading_items.js").Reading} item @param {string} [lot] */
const lastOf = (index, of, item, lot) => index.last(of, item.per_lot ? lot : undefined)?.value;

/**
 * @param {import("./reading_items.js").Reading} item @param {number | undefined} last @param {import("./records.js").Limit} limit @param {import("./log_words.js").Teller} teller
 * @param {(value?: number, written?: string) => void} keep @param {HTMLElement} refused @param {import("./sheet.js").Sheet} sheet
 */
function addValueFields(item, last, limit, teller, keep, refused, sheet) {
  const { unit, digits } = teller.unitOf(item.measure ?? "");
  const shown = (/** @type {number | undefined} */ si) => (si === undefined ? undefined : fromSi(si, unit));
  const words = (/** @type {string} */ number) => `${number} ${number === "1" || !unit.plural ? unit.symbol : unit.plural}`.trim();
  const step = neat((item.step ?? 10 ** -digits * unit.factor) / unit.factor);
  const range = /** @type {[number, number]} */ ((item.range ?? [-Infinity, Infinity]).map(shown));
  const isFarOff = Boolean(item.within) && last === undefined;
  const quick = isFarOff ? [] : offered({ last: shown(last), low: shown(limit.low), high: shown(limit.high), step, range, counts: Boolean(item.adds_up) });
  const take = (/** @type {number} */ number, /** @type {string} */ text) => keep(toSi(number, unit), words(text).slice(0, 40));
  const buttons = quick.map((number) => {
    const text = writeNumber(number, placesOf(number));
    const button = element("button", { type: "button", class: "key" }, text);
    button.addEventListener("click", () => take(number, text));
    return button;
  });
  const pad = makeKeypad(unit.plural || unit.symbol, range[0] < 0);
  sheet.onKey(pad.take);
  const typed = () => {
    const number = readNumber(pad.typed());
    refused.hidden = number !== null;
    refused.textContent = number === null ? tell("nothing") : "";
    if (number !== null) take(number, pad.typed());
  };
  if (quick.length) sheet.add(element("p", { class: "sheet__about" }, tell("quick")), element("div", { class: "quick" }, ...buttons));
  sheet.add(pad.pad);
  sheet.rest(...pad.line, largeButton(tell("keep"), typed));
}

/** @param {number} number */
const placesOf = (number) => (String(number).split(".")[1] ?? "").length;

/** @param {Page} page @param {Given} given @param {() => void} changed */
function lotChips(page, given, changed) {
  const lots = knownLots(page);
  const all = [...lots, nextLot(lots)];
  return chips(tell("lot", { lot: "" }).trim(), all.map((lot) => [lot, lot]), given.lot ?? "", (lot) => {
    given.lot = lot;
    changed();
  });
}

/** The names that were used today, the last first. @param {Page} page @param {string} of */
function namesOf(page, of) {
  const used = page.log.of(openRun(page.store)).standing().filter((entry) => entry.of === of).flatMap(({ name }) => name ?? []);
  return [...new Set(used.reverse())];
}

/** @param {Page} page @param {string} of */
const firstName = (page, of) => namesOf(page, of)[0] ?? "1";

/** @param {Page} page @param {string} of @param {string} title @param {Given} given */
function nameFields(page, of, title, given) {
  const names = namesOf(page, of).slice(0, 5);
  const numbers = ["1", "2", "3"].filter((name) => !names.includes(name)).slice(0, Math.max(1, 3 - names.length));
  const field = element("input", { type: "text", maxlength: "60", "aria-label": title, autocomplete: "off", placeholder: tell("who_other") });
  const group = chips(title, [...names, ...numbers].map((name) => [name, name]), given.name ?? "", (name) => {
    given.name = name;
    field.value = "";
  });
  field.addEventListener("input", () => (given.name = tidy(field.value, 60)));
  group.append(field);
  return group;
}
