// Facts that must outlive a killed browser: one key each, read whole at the start, written through at once.
// localStorage lost what was written in the last two seconds; IndexedDB with strict durability did not.

const TABLE = "facts";

/**
 * @typedef {object} Store
 * @property {(key: string) => any} get
 * @property {(prefix: string) => [string, any][]} entries
 * @property {(key: string, value: any) => Promise<boolean>} put  resolves when it is on disk, with false when it is not
 * @property {(key: string) => Promise<boolean>} remove
 * @property {(listener: (key: string) => void) => () => void} watch  called for every change, also from other windows
 * @property {() => number} unsaved  how many facts are only in memory
 */

/** @param {string} name @returns {Promise<IDBDatabase>} */
function openDatabase(name) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("blocked"));
  });
}

/** @param {IDBDatabase} database @returns {Promise<Map<string, any>>} */
function readAll(database) {
  return new Promise((resolve, reject) => {
    const facts = new Map();
    const cursor = database.transaction(TABLE).objectStore(TABLE).openCursor();
    cursor.onerror = () => reject(cursor.error);
    cursor.onsuccess = () => {
      if (!cursor.result) return resolve(facts);
      facts.set(String(cursor.result.key), cursor.result.value);
      cursor.result.continue();
    };
  });
}

/** @param {IDBDatabase} database @param {Iterable<[string, any]>} changes  a value of undefined takes the key out */
function write(database, changes) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(TABLE, "readwrite", { durability: "strict" });
    transaction.oncomplete = () => resolve(true);
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
    const table = transaction.objectStore(TABLE);
    for (const [key, value] of changes) {
      if (value === undefined) table.delete(key);
      else table.put(value, key);
    }
  });
}

/** @param {string} name @returns {Promise<Store>} */
export async function openStore(name) {
  /** @type {IDBDatabase | null} */
  let database = await openDatabase(name).catch(() => null);
  const facts = database ? await readAll(database).catch(() => new Map()) : new Map();
  const unsaved = new Map();
  const listeners = new Set();
  const channel = new BroadcastChannel(name);
  const announce = (/** @type {string} */ key) => listeners.forEach((listener) => listener(key));

  channel.onmessage = ({ data: [key, value] }) => {
    keepInMemory(key, value);
    announce(key);
  };

  function keepInMemory(/** @type {string} */ key, /** @type {any} */ value) {
    if (value === undefined) facts.delete(key);
    else facts.set(key, value);
  }

  async function reopen() {
    database?.close();
    database = await openDatabase(name);
    const kept = await readAll(database);
    // Someone cleared the site's data under an open page: what is in memory goes back, all of it.
    if (kept.size === 0) for (const fact of facts) unsaved.set(...fact);
  }

  async function flush() {
    const changes = [...unsaved];
    if (!database) await reopen();
    await write(/** @type {IDBDatabase} */ (database), changes);
    for (const [key, value] of changes) if (unsaved.get(key) === value) unsaved.delete(key);
  }

  async function change(/** @type {string} */ key, /** @type {any} */ value) {
    keepInMemory(key, value);
    unsaved.set(key, value);
    channel.postMessage([key, value]);
    announce(key);
    const saved = await flush().catch(() => reopen().then(flush)).then(() => true, () => false);
    announce("");
    return saved;
  }

  return {
    get: (key) => facts.get(key),
    entries: (prefix) => [...facts].filter(([key]) => key.startsWith(prefix)),
    put: change,
    remove: (key) => change(key, undefined),
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    unsaved: () => unsaved.size,
  };
}
