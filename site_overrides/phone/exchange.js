// Records from phone to phone: sent by the share sheet or as a file, taken in from files after a look at what is new.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { items, tell } from "./log_words.js";
import { version } from "./log_content.js";
import { aheadBy, clashes, clockOffsets, news } from "./merge.js";
import { takeFile } from "./record_check.js";
import { standing } from "./records.js";
import { dayName, finishing, joinToday, runOf } from "./runs.js";
import { markSent, outgoing, recordFile, saveAs, shareable, tableFile, unsent } from "./sending.js";
import { isTraining } from "./skills_signed.js";
import { say, span } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page @typedef {import("./record_check.js").Taken} Taken @typedef {import("./records.js").Entry} Entry @typedef {import("./runs.js").Run} Run */

const MOST_BYTES = 64_000_000;

/** @param {Page} page @param {HTMLElement} place */
export function mountExchange(page, place) {
  const part = (/** @type {string} */ name) => /** @type {any} */ (place.querySelector(`[data-exchange-${name}]`));
  part("share").hidden = !shareable("record", "{}");
  part("share").addEventListener("click", () => share(page, part("state")));
  part("file").addEventListener("click", async (/** @type {MouseEvent} */ event) => {
    const run = page.run();
    const { text, count } = recordFile(page, run, version);
    if (await saveAs(event, `record-${run || "empty"}-${page.log.phone()}.json`, "application/json", text)) markSent(page, run, count);
  });
  part("table").addEventListener("click", (/** @type {MouseEvent} */ event) => saveAs(event, `record-${page.run() || "empty"}.csv`, "text/csv", tableFile(page, page.run())));
  part("open").addEventListener("change", async () => {
    const files = [...part("open").files];
    part("found").replaceChildren();
    for (const file of files) part("found").append(await look(page, file));
    part("open").value = "";
    part("found").querySelector("button")?.focus({ preventScroll: true });
    part("found").scrollIntoView({ block: "center" });
  });
  const paint = () => paintState(page, part);
  paint();
  let waiting = 0;
  watchWhileShown(page.store, place, () => void (waiting ||= window.setTimeout(() => {
    waiting = 0;
    paint();
  }, 100)));
}

/** @param {Page} page @param {(name: string) => any} part */
function paintState(page, part) {
  const all = outgoing(page, page.run());
  const left = unsent(page, page.run());
  part("state").textContent = !all.length ? tell("exchange_none") : left ? tell("exchange_left", { count: left, all: all.length }) : tell("exchange_all_left", { count: all.length });
  const offsets = clockOffsets(all.filter(({ kind }) => kind === "merge")).filter(({ sure }) => sure);
  part("clocks").hidden = !offsets.length;
  part("clocks").textContent = offsets.map(({ phone, other, seconds }) => tell("exchange_clocks", { phone, other, time: span(Math.abs(seconds)) })).join(" ");
}

/** @param {Page} page @param {HTMLElement} words */
async function share(page, words) {
  const run = page.run();
  const { text, count } = recordFile(page, run, version);
  const file = shareable(`record-${run}-${page.log.phone()}`, text);
  const sent = file && (await navigator.share({ files: [file] }).then(() => true, () => false));
  if (!sent) return;
  await markSent(page, run, count);
  words.textContent = tell("exchange_sent");
}

/** What a file has, before anything is taken from it. @param {Page} page @param {File} file */
async function look(page, file) {
  const section = element("section", { class: "exchange__file" });
  const text = file.size > MOST_BYTES ? null : await file.arrayBuffer().then((bytes) => new TextDecoder("utf-8", { fatal: true }).decode(bytes)).catch(() => "");
  const ranges = Object.fromEntries(Object.entries(items).flatMap(([of, { range }]) => (range ? [[of, range]] : [])));
  /** @type {Taken} */ const taken = text === null ? { phone: "", clock: 0, entries: [], faults: [{ code: "too_big", at: "", entry: 0 }], refused: 0 } : takeFile(text, ranges);
  const [whole] = taken.faults.filter(({ entry }) => entry === 0);
  if (whole) {
    section.append(element("p", { class: "sheet__refused", role: "alert" }, tell("exchange_file_refused", { file: file.name, fault: say(`record_fault_${whole.code}`, { at: whole.at }) })));
    return section;
  }
  const mine = [...new Set(taken.entries.map(({ run }) => run))].flatMap((run) => page.log.of(run).all());
  const fresh = news(mine, taken.entries);
  const parts = { file: file.name, phone: taken.phone, count: taken.entries.length, news: fresh.length };
  section.append(element("p", {}, tell(fresh.length ? "exchange_found" : "exchange_nothing", parts)), ...refusals(taken), ...clockWords(page, taken));
  const clash = clashes([...mine, ...fresh]).length;
  if (clash) section.append(element("p", {}, tell("exchange_clash", { count: clash })));
  if (fresh.length) section.append(takeButton(page, taken, fresh, section));
  return section;
}

/** @param {Taken} taken */
function refusals({ faults, refused }) {
  if (!refused) return [];
  const rows = faults.slice(0, 20).map(({ code, at, entry }) => element("li", {}, tell("exchange_refused_row", { entry, fault: say(`record_fault_${code}`, { at }) })));
  if (refused > rows.length) rows.push(element("li", {}, tell("exchange_refused_more", { count: refused - rows.length })));
  return [element("p", {}, tell("exchange_refused", { count: refused })), element("ul", { class: "exchange__refused" }, ...rows)];
}

/** @param {Page} page @param {Taken} taken */
function clockWords(page, { phone, clock }) {
  const ahead = phone === page.log.phone() ? 0 : aheadBy(clock, Date.now());
  if (!ahead) return [];
  const words = tell(ahead > 0 ? "exchange_ahead" : "exchange_behind", { phone, time: span(Math.abs(ahead)) });
  return [element("p", { class: ahead > 0 ? "sheet__refused" : "", role: "status" }, words)];
}

/** @param {Page} page @param {Taken} taken @param {Entry[]} fresh @param {HTMLElement} section */
function takeButton(page, taken, fresh, section) {
  const button = element("button", { type: "button", class: "button button--large" }, tell("exchange_take", { count: fresh.length }));
  button.addEventListener("click", async () => {
    button.disabled = true;
    const runs = [...new Set(fresh.map(({ run }) => run))];
    const changed = runs.flatMap((run) => (isTraining(run) ? [] : changesOf(page, run, fresh.filter((entry) => entry.run === run))));
    const today = runs.find((run) => run.startsWith(dayName(new Date())) && !isTraining(run));
    const joined = today ? joinToday(page.store, today) : [];
    const saved = await page.log.take(fresh, [...changed, ...joined]);
    let noted = true;
    for (const run of runs) {
      const count = fresh.filter((entry) => entry.run === run).length;
      const { saved: isNoted } = await page.log.add(run, { kind: "merge", phone: taken.phone, sent: taken.clock, taken: count });
      noted &&= isNoted;
    }
    button.remove();
    const isFinished = changed.some(([, { ended }]) => ended);
    const words = [tell("exchange_taken", { count: fresh.length, phone: taken.phone }), isFinished && tell("exchange_finished")].filter(Boolean).join(" ");
    section.append(element("p", { class: saved && noted ? "" : "sheet__unsaved", role: "status" }, saved && noted ? words : tell("not_saved")));
  });
  return button;
}

/** What a run becomes by what comes into it: known here, and finished where it was finished there. @param {Page} page @param {string} run @param {Entry[]} fresh @returns {[string, Run][]} */
function changesOf({ store, log }, run, fresh) {
  const known = runOf(store, run);
  const end = finishing(standing([...log.of(run).all(), ...fresh]));
  const ended = end && !known?.ended && fresh.some(({ id }) => id === end.id) ? { ended: end.at } : {};
  if (known && !ended.ended) return [];
  return [[`run/${run}`, { begun: Math.min(...fresh.map(({ at }) => at)), ...known, ...ended }]];
}
