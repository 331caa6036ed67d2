// Search: reads the index only when someone searches, so that a first visit does not pay for it.

import { say } from "./words_said.js";

/** @typedef {{location: string, title: string, text: string}} Entry */

const MOST = 40;
const AROUND = 60;

/** @param {URL} root */
export function startFinder(root) {
  const finder = /** @type {HTMLDialogElement} */ (document.querySelector("[data-finder]"));
  const field = /** @type {HTMLInputElement} */ (finder.querySelector("[data-finder-words]"));
  /** @type {Promise<Entry[]> | undefined} */
  let index;
  const search = async () => {
    index ??= fetch(new URL("search/search_index.json", root)).then((answer) => answer.json()).then(({ docs }) => docs.map(plain));
    try {
      show(finder, root, find(await index, field.value), field.value);
    } catch {
      index = undefined;
      count(finder).textContent = say("search_failed");
    }
  };
  document.addEventListener("click", (event) => {
    if (/** @type {Element} */ (event.target).closest?.("[data-search-open]")) {
      finder.showModal();
      search();
    }
  });
  field.addEventListener("input", search);
  field.form?.addEventListener("submit", (event) => {
    if (event.submitter === null || document.activeElement === field) event.preventDefault();
  });
  finder.addEventListener("click", (event) => /** @type {Element} */ (event.target).closest("a") && finder.close());
}

/** @param {HTMLElement} finder */
const count = (finder) => /** @type {HTMLElement} */ (finder.querySelector("[data-finder-count]"));

/** The index holds marked-up text; only its words are wanted. @param {Entry} entry */
function plain(entry) {
  const words = (/** @type {string} */ text) => {
    const parsed = new DOMParser().parseFromString(text, "text/html");
    return (parsed.body.textContent ?? "").replace(/\s+/g, " ").trim();
  };
  return { location: entry.location, title: words(entry.title), text: words(entry.text) };
}

/** Small letters without accents. @param {string} text */
const bare = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/**
 * Entries in which every word begins some word; those with the words in their titles first.
 * @param {Entry[]} entries @param {string} query @returns {Entry[]}
 */
export function find(entries, query) {
  const wanted = bare(query).split(/[^\p{L}\p{N}]+/u).filter(Boolean);
  if (!wanted.length) return [];
  const starts = wanted.map((word) => new RegExp(`(^|[^\\p{L}\\p{N}])${word}`, "u"));
  const scored = entries.map((entry) => ({ entry, score: scoreOf(entry, starts) })).filter(({ score }) => score > 0);
  return scored.sort((one, other) => other.score - one.score).map(({ entry }) => entry);
}

/** @param {Entry} entry @param {RegExp[]} starts */
function scoreOf(entry, starts) {
  const title = bare(entry.title);
  const text = bare(entry.text);
  let score = entry.location.includes("#") ? 1 : 2;
  for (const start of starts) {
    if (start.test(title)) score += 10;
    else if (start.test(text)) score += 1;
    else return 0;
  }
  return score;
}

/** @param {HTMLElement} finder @param {URL} root @param {Entry[]} found @param {string} query */
function show(finder, root, found, query) {
  const list = /** @type {HTMLElement} */ (finder.querySelector("[data-finder-found]"));
  count(finder).textContent = query.trim() ? say("search_found", { count: found.length }) : "";
  list.replaceChildren(...found.slice(0, MOST).map((entry) => {
    const link = document.createElement("a");
    link.href = new URL(entry.location, root).href;
    const title = document.createElement("strong");
    title.textContent = entry.title;
    link.append(title, excerpt(entry.text, query));
    const row = document.createElement("li");
    row.append(link);
    return row;
  }));
}

/** Some words round the first word found. @param {string} text @param {string} query */
function excerpt(text, query) {
  const at = Math.max(0, bare(text).indexOf(bare(query.trim().split(/\s+/)[0] ?? "")) - AROUND);
  return (at > 0 ? "… " : "") + text.slice(at, at + 3 * AROUND) + (text.length > at + 3 * AROUND ? " …" : "");
}
