/**
 * Entries of the day's record: made here, judged in judging.js, foretold in curve.js, checked in record_check.js when
 * they come from elsewhere, brought together in merge.js, written for spreadsheets in record_table.js. None of these
 * modules touches the page, the clock or the store; `generator/records/` is their twin, function for function.
 *
 * How a page uses them:
 *   const entry = makeEntry(desk, { kind: "reading", of: "kettle", value: 353.15, written: "80 °C", limit });
 *   desk  { phone, counter, run, who, now, zone }: the counter is one more than the last this phone gave out
 *   limit is limitFor(...) of judging.js at that moment, so that the record keeps the limit that was in force
 *   await store.keep([[keyOf(entry), entry]])      keep it first, then answer the tap; NOT SAVED when that gives false
 *   log.js does both for a page: await log.add(run, { kind: "reading", ... })
 *   const all = log.of(run).all()                  all entries of a run, as log_index.js holds them
 *   standing(all)                                  what counts; inOrder(all) is what is shown, corrections and all
 *   makeEntry(desk, { ...fields, corrects: old.id })               takes the place of another entry
 *   makeEntry(desk, { ...fields, corrects: old.id, gone: true })   takes it back
 *   makeEntry(desk, { kind: "action", answers: reading.id, text, reason })
 *   makeEntry(desk, { kind: "plan", values, text: version })       once, when the day begins
 *   toFile(desk, all, version)                     the text to share, and in record_check.js takeFile(text, ranges)
 *   merge.js: news(mine, theirs) for log.take, then an entry of kind "merge" { phone, sent: file.clock, taken: news.length }
 * The kinds and their fields: record_format.js, which the build makes from generator/records/day_record.schema.json.
 * What can be read: readings.js, which the build makes from content.
 *
 * @typedef {{low?: number, high?: number, by?: number}} Limit  SI units; `by` in milliseconds since 1970
 * @typedef {{id: string, run: string, kind: string, at: number, made?: number, zone: number, who?: string, lot?: string, of?: string,
 *   name?: string, value?: number, written?: string, limit?: Limit, reason?: string, text?: string, step?: string,
 *   prints?: Record<string, string>, values?: Record<string, number | string>, ends?: number, phone?: string,
 *   sent?: number, taken?: number, corrects?: string, answers?: string, gone?: true}} Entry
 * @typedef {{phone: string, counter: number, run: string, who?: string, now: number, zone: number, random?: () => string}} Desk
 */

const DIGITS_OF_CHANCE = 6;

/** A new entry; what is empty is left out. One that names the time it tells of says beside it when it was made. @param {Desk} desk @param {Partial<Entry>} fields @returns {Entry} */
export function makeEntry(desk, fields) {
  const id = `${desk.phone}-${desk.counter}-${(desk.random ?? chance)()}`;
  const made = fields.at === undefined || fields.at === desk.now ? undefined : desk.now;
  const { at = desk.now, zone = desk.zone } = fields;
  const whole = { id, run: desk.run, made, who: desk.who, ...fields, at, zone };
  const written = Object.entries(whole).filter(([, value]) => value !== undefined && value !== "");
  return /** @type {Entry} */ (Object.fromEntries(written));
}

/** Letters and figures that nobody else draws. */
function chance() {
  const drawn = crypto.getRandomValues(new Uint8Array(DIGITS_OF_CHANCE));
  return Array.from(drawn, (byte) => (byte % 36).toString(36)).join("");
}

/** A name for a phone, drawn once and kept. */
export const drawPhone = () => chance() + chance();

/** Where an entry is kept: two entries share a key only when they are the same. @param {Entry} entry */
export const keyOf = (entry) => `log/${entry.run}/${entry.id}/${printOf(canonical(entry))}`;

/** The phone that an entry was made on. @param {Entry} entry */
export const phoneOf = (entry) => entry.id.split("-")[0];

/** Its running number there. @param {Entry} entry */
export const counterOf = (entry) => Number(entry.id.split("-")[1]);

/** Whether what is called `2 big` belongs to what is called `2`. @param {string | undefined} name @param {string | undefined} of */
export const isNamedAfter = (name = "", of = "") => `${name} `.startsWith(`${of} `);

/** What the phone's clock said when it was written down. @param {Entry} entry */
export const clockOf = ({ made, at }) => made ?? at;

/** An entry as one text, the same whatever order its fields came in. @param {unknown} value @returns {string} */
export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${fields.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join(",")}}`;
}

/** A short hash of a text. @param {string} text */
export function printOf(text) {
  let hash = 0x811c9dc5;
  for (let place = 0; place < text.length; place += 1) hash = Math.imul(hash ^ text.charCodeAt(place), 0x01000193);
  return (hash >>> 0).toString(36);
}

/**
 * Entries by the times that they tell of. Those of one phone stand in the order in which it made them even where its
 * clock was set back; only what names an earlier time itself stands there.
 * @param {Entry[]} entries @returns {Entry[]}
 */
export const inOrder = (entries) => placesOf(entries).map(({ entry }) => entry);

/**
 * The same with where each stands: `at`, and the latest that its phone's clock had come to, `clock`.
 * @param {Entry[]} entries @returns {{entry: Entry, at: number, clock: number, phone: string, counter: number}[]}
 */
export function placesOf(entries) {
  const placed = entries.map((entry) => ({ entry, at: entry.at, clock: clockOf(entry), phone: phoneOf(entry), counter: counterOf(entry) }));
  placed.sort((one, other) => one.counter - other.counter || one.clock - other.clock);
  /** @type {Map<string, number>} */ const latest = new Map();
  for (const place of placed) {
    place.clock = Math.max(place.clock, latest.get(place.phone) ?? 0);
    if (place.entry.made === undefined) place.at = place.clock;
    latest.set(place.phone, place.clock);
  }
  placed.sort((one, other) => one.at - other.at || compare(one.phone, other.phone) || one.counter - other.counter
    || compare(canonical(one.entry), canonical(other.entry)));
  return placed;
}

/** @param {string} one @param {string} other */
const compare = (one, other) => (one < other ? -1 : Number(one > other));

/**
 * The entries that count, in order: neither corrected nor taken back. Where two phones corrected one entry without
 * knowing of each other, the later correction counts alone.
 * @param {Entry[]} entries @returns {Entry[]}
 */
export function standing(entries) {
  const correcting = entries.filter(({ corrects }) => corrects);
  const corrected = new Set(correcting.map(({ run, corrects }) => `${run}/${corrects}`));
  const left = entries.filter((entry) => !corrected.has(nameOf(entry)));
  return inOrder((corrected.size < correcting.length ? latestCorrections(entries, left) : left).filter(({ gone }) => !gone));
}

/** @param {Entry} entry */
const nameOf = ({ run, id }) => `${run}/${id}`;

/** Of those that come of one entry, by however many corrections, the last. @param {Entry[]} entries @param {Entry[]} left */
function latestCorrections(entries, left) {
  const ranked = [...entries].sort((one, other) => clockOf(one) - clockOf(other) || compare(phoneOf(one), phoneOf(other))
    || counterOf(one) - counterOf(other) || compare(canonical(one), canonical(other)));
  const byName = new Map(ranked.map((entry) => [nameOf(entry), entry]));
  const firstOf = (/** @type {Entry} */ entry) => {
    const seen = new Set();
    let name = nameOf(entry);
    for (let found = byName.get(name); found?.corrects && !seen.has(name); found = byName.get(name)) {
      seen.add(name);
      name = `${entry.run}/${found.corrects}`;
    }
    return name;
  };
  const stays = new Set(left);
  const last = new Map(ranked.filter((entry) => stays.has(entry)).map((entry) => [firstOf(entry), entry]));
  return left.filter((entry) => !entry.corrects || last.get(firstOf(entry)) === entry);
}

/** What the counts of each thing come to. @param {Entry[]} counting  those that count @returns {Record<string, number>} */
export function totals(counting) {
  /** @type {Record<string, number>} */ const sums = Object.create(null);
  for (const { kind, of, value } of counting) {
    if (kind === "count" && of !== undefined && value !== undefined) sums[of] = (sums[of] ?? 0) + value;
  }
  return sums;
}

/** The record as a file's text. @param {{phone: string, now: number}} desk @param {Entry[]} entries @param {string} [site] */
export function toFile(desk, entries, site) {
  const head = { format: "day-record", version: entries.some(({ made }) => made !== undefined) ? 2 : 1, phone: desk.phone, clock: desk.now, ...(site ? { site } : {}) };
  const lines = inOrder(entries).map((entry) => JSON.stringify(entry));
  return `${JSON.stringify(head).slice(0, -1)},"entries":[\n${lines.join(",\n")}\n]}\n`;
}
