/**
 * The log on this phone. An entry goes to disk before it is told of, and where that fails it is told of as NOT SAVED;
 * none is ever changed or taken away.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./store.js").Store} Store
 * @typedef {ReturnType<typeof import("./log_index.js").makeIndex>} Index
 * @typedef {{entry: Entry, saved: boolean}} Kept  `saved` is false where it is only in memory: NOT SAVED
 * @typedef {object} Log
 * @property {() => string} phone  the name of this phone
 * @property {() => string} who  who holds it
 * @property {(run: string) => Index} of  the entries of a run
 * @property {() => string[]} runs  the runs of which there are entries
 * @property {(run: string, fields: Partial<Entry>) => Promise<Kept>} add
 * @property {(run: string, many: Partial<Entry>[], others?: [string, any][]) => Promise<{entries: Entry[], saved: boolean}>} addAll  all or none
 * @property {(entries: Entry[], others?: [string, any][]) => Promise<boolean>} take  entries from elsewhere
 */

import { makeIndex } from "./log_index.js";
import { counterOf, drawPhone, keyOf, makeEntry, phoneOf } from "./records.js";

const PHONE = "setting/phone";
const WHO = "setting/who";

/** @param {Store} store @returns {Log} */
export function openLog(store) {
  /** @type {Map<string, Index>} */ const runs = new Map();
  const known = new Set();
  let counter = 0;
  const phone = () => store.get(PHONE) ?? nameThisPhone(store);
  const of = (/** @type {string} */ run) => runs.get(run) ?? makeIndex();

  /** @param {string} key @param {Entry} entry */
  function learn(key, entry) {
    if (known.has(key) || !entry) return;
    known.add(key);
    if (phoneOf(entry) === phone()) counter = Math.max(counter, counterOf(entry));
    if (!runs.has(entry.run)) runs.set(entry.run, makeIndex());
    of(entry.run).add(entry);
  }

  const inOrderMade = store.entries("log/").sort(([, one], [, other]) => one.at - other.at || counterOf(one) - counterOf(other));
  for (const [key, entry] of inOrderMade) learn(key, entry);
  store.watch((_, keys) => keys.forEach((key) => key.startsWith("log/") && learn(key, store.get(key))));

  /** @param {string} run @param {Partial<Entry>[]} many @param {[string, any][]} [others] */
  async function addAll(run, many, others = []) {
    const now = Date.now();
    const zone = -new Date(now).getTimezoneOffset();
    const entries = many.map((fields) => makeEntry({ phone: phone(), counter: counter += 1, run, who: who(), now, zone }, fields));
    const saved = await store.keep([...entries.map((entry) => /** @type {[string, any]} */ ([keyOf(entry), entry])), ...others]);
    askToStay();
    return { entries, saved };
  }

  const who = () => store.get(WHO) ?? "";

  return {
    phone,
    who,
    of,
    runs: () => [...runs.keys()],
    addAll,
    add: async (run, fields) => {
      const { entries, saved } = await addAll(run, [fields]);
      return { entry: entries[0], saved };
    },
    take: (entries, others = []) => store.keep([...entries.map((entry) => /** @type {[string, any]} */ ([keyOf(entry), entry])), ...others]),
  };
}

let asked = false;

/** Asks the browser once to keep what is written down for good. */
function askToStay() {
  if (!asked) navigator.storage?.persist?.().catch(() => false);
  asked = true;
}

/** @param {Store} store */
function nameThisPhone(store) {
  const name = drawPhone();
  store.put(PHONE, name);
  return name;
}

/** @param {Store} store @param {string} who */
export const setWho = (store, who) => store.put(WHO, who || undefined);
