// Search: reads the list of titles only when someone searches, so that a first visit does not pay for it.

import { element } from "./element.js";
import { loaded, paintAt } from "./paint.js";
import { say } from "./words_said.js";

/**
 * @typedef {{to: string, title: string, page: string, words: string, pageWords: string, order: number}} Entry  `page`: the title of the
 *   page it stands on; what is looked at are `words` and `pageWords`, each word between spaces; `order` is that of the work
 * @typedef {[string, string][]} Titles  where each leads, and its HTML; that of a page before those of what stands on it
 * @typedef {import("./plan_state.js").Plan} Plan
 */

const MOST = 40;
const WORK = "work/";
const LAST = 1000; // behind all cards

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
    entries ??= fetch(new URL("search.json", root)).then((answer) => answer.json()).then((titles) => readTitles(titles, plan));
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

/** The entries with the numbers of the plan in their titles. @param {Titles} titles @param {Plan} plan @returns {Promise<Entry[]>} */
async function readTitles(titles, plan) {
  const { body } = new DOMParser().parseFromString(titles.map(([, title]) => `<p>${title}</p>`).join(""), "text/html");
  if (plan.differs()) paintAt(body, plan, plan.compute(await loaded(plan)));
  let above = { title: "", order: 0 };
  return Array.from(body.children, (line, place) => {
    const [to] = titles[place];
    const title = line.textContent ?? "";
    const badge = line.querySelector(".badge")?.textContent ?? "";
    if (!to.includes("#")) above = { title, order: to.startsWith(WORK) ? Number(badge) : LAST };
    const page = to.includes("#") ? above.title : "";
    return { to, title, page, words: wordsOf(`${title.slice(badge.length)} ${badge}`), pageWords: wordsOf(page), order: above.order };
  });
}

/** @param {string} text */
const wordsOf = (text) => ` ${wordsIn(text).join(" ")} `;

/** The words of a text in small letters without accents. @param {string} text */
const wordsIn = (text) => text.normalize("NFD").replace(/\p{M}+/gu, "").toLowerCase().split(/[^\p{L}\p{N}]+/u).filter(Boolean);

/**
 * Entries in which every word begins some word: first those with the words in their titles, best whole and at the very beginning,
 * and otherwise in the order of the work: emergencies, stations by their numbers, all else.
 * @param {Entry[]} entries @param {string} query @returns {Entry[]}
 */
export function find(entries, query) {
  const wanted = wordsIn(query);
  if (!wanted.length) return [];
  const scored = entries.map((entry) => ({ entry, score: scoreOf(entry, wanted) })).filter(({ score }) => score > 0);
  return scored.sort((one, other) => other.score - one.score || one.entry.order - other.entry.order).map(({ entry }) => entry);
}

/** @param {Entry} entry @param {string[]} wanted */
function scoreOf({ to, words, pageWords }, wanted) {
  let score = (to.includes("#") ? 1 : 5) + (words.startsWith(` ${wanted[0]}`) ? 3 : 0);
  for (const word of wanted) {
    if (words.includes(` ${word}`)) score += words.includes(` ${word} `) ? 11 : 10;
    else if (pageWords.includes(` ${word}`)) score += 1;
    else return 0;
  }
  return score;
}

/** @param {URL} root @param {Entry[]} found @param {string} query */
function show(root, found, query) {
  count.textContent = query.trim() ? say("search_found", { count: found.length }) : "";
  list.replaceChildren(...found.slice(0, MOST).map((entry) => {
    const title = element("strong", {}, entry.title);
    return element("li", {}, element("a", { href: new URL(entry.to, root).href }, title, entry.page));
  }));
}
