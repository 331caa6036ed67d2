// Facts that must outlive a killed browser: one key each, read whole at the start, written through at once.
// localStorage lost what was written in the last two seconds; IndexedDB with strict durability did not.

import { painted } from "./frames.js";
import { findLeft, forgetLeft, leaveBehind } from "./leaving.js";

const TABLE = "facts";
const [LATER, LATEST] = [500, 60_000]; // milliseconds until a disk that failed is tried again, first and at last
const PATIENCE = 5000; // milliseconds: a database that has not answered by then may never (WebKit bug 315804)
const GIVEN_ONCE = /^run\/|^setting\/phone$/; // a day and a phone that are on disk are not replaced by what was begun without them

/**
 * @typedef {object} Store
 * @property {(key: string) => any} get
 * @property {(prefix: string) => [string, any][]} entries
 * @property {(key: string, value: any) => Promise<boolean>} put  resolves when it is on disk, with false when it is not
 * @property {(key: string) => Promise<boolean>} remove
 * @property {(facts: [string, any][]) => Promise<boolean>} keep  all or none go to disk, and they are told of when that was tried: where it failed, as not saved
 * @property {(listener: (key: string, keys: string[]) => void) => () => void} watch  called for every change, also from other windows, and with an empty key when something came to disk or did not
 * @property {() => number} unsaved  how many facts are only in memory
 * @property {() => boolean} isRead  whether the disk could be read; where it cannot be, nothing that is changed is kept
 */

/** @template T @param {(resolve: (value: T) => void, reject: (reason: unknown) => void) => void} ask @returns {Promise<T>} */
function answer(ask) {
  const silence = new Promise((_, reject) => setTimeout(() => reject(new Error("no answer")), PATIENCE));
  return Promise.race([new Promise(ask), silence]);
}

/** @param {string} name @returns {Promise<IDBDatabase>} */
function openDatabase(name) {
  return answer((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("blocked"));
  });
}

/** What tells other windows; Firefox refuses it where nothing may be kept. @param {string} name @returns {Pick<BroadcastChannel, "onmessage" | "postMessage">} */
function openChannel(name) {
  try {
    return new BroadcastChannel(name);
  } catch {
    return { onmessage: null, postMessage: () => undefined };
  }
}

/** @param {IDBDatabase} database @returns {Promise<[string, any][]>} */
function readAll(database) {
  return answer((resolve, reject) => {
    const transaction = database.transaction(TABLE);
    const table = transaction.objectStore(TABLE);
    const [keys, values] = [table.getAllKeys(), table.getAll()];
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
    transaction.oncomplete = () => resolve(keys.result.map((key, place) => [String(key), values.result[place]]));
  });
}

/** @param {IDBDatabase} database @param {Iterable<[string, any]>} changes  a value of undefined takes the key out */
function write(database, changes) {
  return answer((resolve, reject) => {
    const transaction = database.transaction(TABLE, "readwrite", { durability: "strict" });
    transaction.oncomplete = () => resolve(true);
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
    const table = transaction.objectStore(TABLE);
    for (const [key, value] of changes) {
      if (value === undefined) table.delete(key);
      else table.put(value, key);
    }
    transaction.commit(); // a page that is left ends what was not committed
  });
}

/** Facts by the first part of their keys, so that looking for few of them does not mean going through all. */
function makeMemory() {
  /** @type {Map<string, Map<string, any>>} */ const kinds = new Map();
  const kindOf = (/** @type {string} */ key) => key.slice(0, key.indexOf("/") + 1);
  const ofKind = (/** @type {string} */ key) => kinds.get(kindOf(key));
  return {
    set(/** @type {string} */ key, /** @type {any} */ value) {
      if (value === undefined) return void ofKind(key)?.delete(key);
      if (!ofKind(key)) kinds.set(kindOf(key), new Map());
      ofKind(key)?.set(key, value);
    },
    get: (/** @type {string} */ key) => ofKind(key)?.get(key),
    all: () => [...kinds.values()].flatMap((facts) => [...facts]),
    entries(/** @type {string} */ prefix) {
      /** @type {[string, any][]} */ const found = [];
      for (const fact of ofKind(prefix) ?? []) if (fact[0].startsWith(prefix)) found.push(fact);
      return found;
    },
  };
}

/** Those who hear of changes, by the first key and all. */
function makeListeners() {
  /** @type {Set<(key: string, keys: string[]) => void>} */ const listeners = new Set();
  const announce = (/** @type {string} */ key, keys = [key]) => listeners.forEach((listener) => listener(key, keys));
  return {
    announce,
    tellOf: (/** @type {[string, any][]} */ facts) => void (facts.length && announce(facts[0][0], facts.map(([key]) => key))),
    /** @type {Store["watch"]} */ watch(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** @param {string} name @returns {Promise<Store>} */
export async function openStore(name) {
  /** @type {IDBDatabase | null} */
  let database = await openDatabase(name).catch(() => null);
  const memory = makeMemory();
  const unsaved = new Map();
  /** @type {Map<string, [string, any][]>} those that are kept together and for which nothing newer has come */ const pending = new Map();
  /** @type {Map<string, any>} what other windows have not been told of */ const fresh = new Map();
  /** @type {Promise<boolean> | undefined} */ let saving;
  /** @type {Promise<void> | undefined} */ let opening;
  let [wait, trying] = [LATER, 0];
  const { announce, tellOf, watch } = makeListeners();
  const channel = openChannel(name);
  /** @type {[string, any][]} what other windows change while the disk is read */ const early = [];
  channel.onmessage = ({ data: facts }) => void early.push(...facts);
  const found = database && await readAll(database).catch(() => null);
  let isRead = Boolean(found);
  const left = findLeft(name);
  learn([...found ?? [], ...early, ...left]);
  for (const fact of left) unsaved.set(...fact);

  channel.onmessage = ({ data: facts }) => {
    for (const [key, value] of facts) {
      pending.delete(key);
      if (unsaved.has(key) && !fresh.has(key)) unsaved.set(key, value); // what is tried again later is what is newest
    }
    learn(facts);
    tellOf(facts);
  };

  function learn(/** @type {[string, any][]} */ facts) {
    for (const fact of facts) memory.set(...fact);
  }

  const reopen = () => (opening ??= openAnew().finally(() => (opening = undefined)));

  async function openAnew() {
    database?.close();
    database = await openDatabase(name);
    const kept = await readAll(database);
    if (!isRead) return readLate(kept);
    // Someone cleared the site's data under an open page: what is in memory goes back, all of it.
    if (kept.length === 0) for (const fact of memory.all()) unsaved.set(...fact);
  }

  /** The disk could not be read when this page began: what was changed since stays, and all else is as it is there. */
  function readLate(/** @type {[string, any][]} */ kept) {
    isRead = true;
    const late = kept.filter(([key]) => GIVEN_ONCE.test(key) || !unsaved.has(key));
    for (const [key] of late) {
      unsaved.delete(key);
      pending.delete(key);
    }
    learn(late);
    tellOf(late);
  }

  async function flush() {
    if (!isRead) await reopen();
    const changes = [...unsaved];
    await write(/** @type {IDBDatabase} */ (database), changes);
    for (const [key, value] of changes) if (unsaved.get(key) === value) unsaved.delete(key);
    forgetLeft(name, new Map(changes));
  }

  const save = () => flush().catch(() => reopen().then(flush)).then(() => {
    wait = LATER;
    return true;
  }, () => {
    tryLater();
    return false;
  });

  /** What did not come to disk, or from it, is tried again, ever less often. */
  function tryLater() {
    trying ||= window.setTimeout(async () => {
      trying = 0;
      await save();
      announce("");
    }, wait);
    wait = Math.min(2 * wait, LATEST);
  }

  function change(/** @type {string} */ key, /** @type {any} */ value) {
    memory.set(key, value);
    unsaved.set(key, value);
    fresh.set(key, value);
    pending.delete(key);
    announce(key);
    return (saving ??= painted().then(pass));
  }

  /** What was changed goes to other windows and to disk, all that came in one frame together. */
  async function pass() {
    saving = undefined;
    channel.postMessage([...fresh]);
    fresh.clear();
    const saved = await save();
    announce("");
    return saved;
  }

  // A page that is left may not come to its next frame, and what an iPhone puts aside it may end without a word.
  window.addEventListener("pagehide", leave);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") leave();
    else if (unsaved.size) save().then(() => announce(""));
  });
  if (unsaved.size) save().then(() => announce(""));
  if (!isRead) tryLater();

  function leave() {
    leaveBehind(name, unsaved);
    if (saving) save();
  }

  async function keep(/** @type {[string, any][]} */ facts) {
    if (!facts.length) return true;
    for (const fact of facts) unsaved.set(...fact);
    for (const [key] of facts) pending.set(key, facts);
    const saved = await save();
    const latest = facts.filter(([key]) => pending.get(key) === facts);
    for (const [key] of latest) pending.delete(key);
    learn(latest);
    if (latest.length) channel.postMessage(latest);
    tellOf(latest);
    announce("");
    return saved;
  }

  return {
    get: memory.get,
    entries: memory.entries,
    put: change,
    keep,
    remove: (key) => change(key, undefined),
    watch,
    unsaved: () => unsaved.size,
    isRead: () => isRead,
  };
}
