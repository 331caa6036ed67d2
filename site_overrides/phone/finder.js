// Search: reads the index only when someone searches, so that a first visit does not pay for it.

import { element } from "./element.js";
import { loaded, shower } from "./paint.js";
import { options } from "./words.js";
import { say } from "./words_said.js";

/**
 * @typedef {{to: string, title: string, text: string}} Entry
 * @typedef {{pages: [string, string, [string, string][]][], values: Record<string, [string, string]>}} Index
 * @typedef {import("./plan_state.js").Plan} Plan
 */

const MOST = 40;
const PLACE = /\{([a-z][a-z0-9_]*)( first)?\}/g;

const field = element("input", {
  type: "search", "aria-label": say("search_words"), placeholder: say("search_words"),
  autocomplete: "off", autocapitalize: "off", spellcheck: "false", enterkeyhint: "search",
});
const close = element("button", { class: "finder__close", "aria-label": say("search_close") }, element("i", { class: "symbol symbol--close" }));
const count = element("p", { class: "finder__count", role: "status" });
const list = element("ol", { class: "finder__found" });
const finder = element("dialog", { class: "finder", "aria-label": say("search_words") },
  element("form", { method: "dialog", class: "finder__row" }, field, close), count, list);
document.body.append(finder);

/** @type {Promise<Entry[]> | undefined} */
let entries;
/** @type {() => void} */
let search = () => undefined;

field.addEventListener("input", () => search());
field.addEventListener("keydown", (event) => event.key === "Enter" && event.preventDefault());
finder.addEventListener("click", (event) => /** @type {Element} */ (event.target).closest("a") && finder.close());

/** @param {URL} root @param {Plan} plan */
export function openFinder(root, plan) {
  const stop = plan.watch(() => {
    entries = undefined;
    stop();
  });
  search = async () => {
    entries ??= fetch(new URL("search.json", root)).then((answer) => answer.json()).then((index) => readIndex(index, plan));
    try {
      show(root, find(await entries, field.value), field.value);
    } catch {
      entries = undefined;
      count.textContent = say("search_failed");
    }
  };
  if (!finder.open) finder.showModal();
  search();
}

/** The entries with the numbers of the plan in their places. @param {Index} index @param {Plan} plan @returns {Promise<Entry[]>} */
async function readIndex({ pages, values }, plan) {
  let number = (/** @type {string} */ id, /** @type {boolean} */ first) => values[id][first ? 1 : 0];
  if (plan.differs()) {
    const { formulas, day } = plan.compute(await loaded(plan));
    const show_ = shower(formulas);
    number = (id, first) => (id in day.values ? show_(id, day.values[id], plan.system(), first ? "first" : "both") : "–");
  }
  const filled = (/** @type {string} */ text) => text.replace(PLACE, (_, id, first) => (id in options ? options[id][plan.option(id)] : number(id, Boolean(first))));
  return pages.flatMap(([address, page, parts]) => [
    { to: address, title: page, text: "" },
    ...parts.map(([part, title]) => ({ to: `${address}#${part}`, title: filled(title), text: page })),
  ]);
}

/** Small letters without accents, as many as there were. @param {string} text */
const bare = (text) => Array.from(text, (letter) => letter.normalize("NFD")[0].toLowerCase()[0]).join("");

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
  let score = entry.to.includes("#") ? 1 : 5;
  for (const start of starts) {
    if (start.test(title)) score += 10;
    else if (start.test(text)) score += 1;
    else return 0;
  }
  return score;
}

/** @param {URL} root @param {Entry[]} found @param {string} query */
function show(root, found, query) {
  count.textContent = query.trim() ? say("search_found", { count: found.length }) : "";
  list.replaceChildren(...found.slice(0, MOST).map((entry) => {
    const title = element("strong", {}, entry.title);
    return element("li", {}, element("a", { href: new URL(entry.to, root).href }, title, entry.text));
  }));
}
