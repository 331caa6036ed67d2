// Search: reads the list of titles only when someone searches, so that a first visit does not pay for it.

import { breathe } from "./breathing.js";
import { element } from "./element.js";
import { painted } from "./frames.js";
import { loaded, paintAt, shower } from "./paint.js";
import { say } from "./words_said.js";

/**
 * @typedef {{to: string, title: string, page: string, words: string, sought: string, pageWords: string, order: number}} Entry  `page`: the
 *   title of the page it stands on; what is looked at are `words`, `sought` (others by which people look for it) and `pageWords`, each
 *   word between spaces; `order` is that of the work
 * @typedef {[string, string][]} Titles  where each leads, and its HTML; that of a page before those of what stands on it. A second one
 *   that leads to the same place is no title, but has the words by which people look for it
 * @typedef {{start: string, whole: string}} Form  a word as it begins another, and as it stands whole
 * @typedef {import("./plan_state.js").Plan} Plan
 */

const MOST = 40;
const AT_ONCE = 12; // more than a screen holds
const WORK = "work/";
const NUMBERS = "numbers/";
const LAST = 1000; // behind all cards
const WORTH_A_GUESS = 4; // letters of a word that may be mistyped
const [small, asks, endings] = ["search_small", "search_asks", "search_endings"].map((id) => say(id).split(" "));

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
/** @type {Set<string> | undefined} all words of titles, once one is looked for that none of them has */
let known;
/** @type {() => void} */
let search = () => undefined;

field.addEventListener("input", () => search());
field.addEventListener("keydown", (event) => event.key === "Enter" && event.preventDefault());
finder.addEventListener("click", (event) => /** @type {Element} */ (event.target).closest("a") && finder.close());

/** @param {URL} root @param {Plan} plan */
export function openFinder(root, plan) {
  const stop = plan.watch(() => {
    entries = known = undefined;
    stop();
  });
  search = async () => {
    entries ??= fetch(new URL("search.json", root)).then((answer) => answer.json()).then((titles) => readTitles(titles, plan));
    try {
      await show(root, find(await entries, field.value), field.value);
      await tellFigures(plan);
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
  /** @type {Entry[]} */ const entries = [];
  for (const [place, line] of [...body.children].entries()) {
    const [to] = titles[place];
    const last = entries.at(-1);
    if (last?.to === to) {
      last.sought += wordsOf(line.textContent ?? "");
      continue;
    }
    const title = line.textContent ?? "";
    const badge = line.querySelector(".badge")?.textContent ?? "";
    if (!to.includes("#")) above = { title, order: to.startsWith(WORK) ? Number(badge) : LAST };
    const page = to.includes("#") ? above.title : "";
    entries.push({ to, title, page, words: wordsOf(`${title.slice(badge.length)} ${badge}`), sought: "", pageWords: wordsOf(page), order: above.order });
  }
  return entries;
}

/** @param {string} text */
const wordsOf = (text) => ` ${wordsIn(text).join(" ")} `;

/** The words of a text in small letters without accents. @param {string} text */
const wordsIn = (text) => text.normalize("NFD").replace(/\p{M}+/gu, "").toLowerCase().split(/[^\p{L}\p{N}]+/u).filter(Boolean);

/**
 * The entries that have the most of the words, all of them where any entry has: first those with the words in their titles, best whole
 * and at the very beginning, or looked for by them; numbers where the question asks for one; and otherwise in the order of the work:
 * emergencies, stations by their numbers, all else. Small words of a question count only where there are no others.
 * @param {Entry[]} entries @param {string} query @returns {Entry[]}
 */
export function find(entries, query) {
  const typed = wordsIn(query);
  const telling = typed.filter((word) => !small.includes(word));
  const wanted = (telling.length ? telling : typed).map((word) => formsOf(word, entries));
  const asking = typed.some((word) => asks.includes(word));
  const scored = entries.map((entry) => scoreOf(entry, wanted, asking));
  const most = scored.reduce((so, { had }) => Math.max(so, had), 1);
  return scored.filter(({ had }) => had === most).sort((one, other) => other.score - one.score || one.entry.order - other.entry.order).map(({ entry }) => entry);
}

/** A word as typed and without its ending; where no entry has it, those from which it differs by a letter. @param {string} word @param {Entry[]} entries @returns {Form[]} */
function formsOf(word, entries) {
  const stems = endings.filter((ending) => word.endsWith(ending) && word.length - ending.length >= Math.min(4, ending.length + 2)).map((ending) => word.slice(0, -ending.length));
  const forms = [word, ...stems].map(formOf);
  if (word.length < WORTH_A_GUESS || entries.some((entry) => forms.some((form) => strengthOf(entry, form)))) return forms;
  known ??= new Set(entries.flatMap(({ words, sought }) => (words + sought).split(" ")));
  return [...known].filter((other) => isNear(word, other)).map(formOf);
}

/** @param {string} word @returns {Form} */
const formOf = (word) => ({ start: ` ${word}`, whole: ` ${word} ` });

/** Whether a word begins like another but for one letter, which is wrong, too much or left out. @param {string} word @param {string} other */
function isNear(word, other) {
  let same = 0;
  while (same < word.length && word[same] === other[same]) same += 1;
  const [rest, after] = [word.slice(same), word.slice(same + 1)];
  return other.startsWith(after, same + 1) || other.startsWith(after, same) || other.startsWith(rest, same + 1);
}

/** How many of the words an entry has, and how well. @param {Entry} entry @param {Form[][]} wanted @param {boolean} asking */
function scoreOf(entry, wanted, asking) {
  let [had, score] = [0, 0];
  for (const forms of wanted) {
    let best = 0;
    for (const form of forms) best = Math.max(best, strengthOf(entry, form));
    if (best) had += 1;
    score += best;
  }
  if (had) score += placeOf(entry, asking) + (wanted.some((forms) => forms.some(({ start }) => entry.words.startsWith(start))) ? 3 : 0);
  return { entry, had, score };
}

/** Pages before what stands on them; so do numbers where one is asked for. @param {Entry} entry @param {boolean} asking */
const placeOf = ({ to }, asking) => (!to.includes("#") || (asking && to.startsWith(NUMBERS)) ? 7 : 1);

/** @param {Entry} entry @param {Form} form */
function strengthOf({ words, sought, pageWords }, { start, whole }) {
  const more = sought && sought.includes(whole) ? 5 : 0;
  if (words.includes(start)) return (words.includes(whole) ? 11 : 10) + more;
  if (sought && sought.includes(start)) return 10 + more;
  return pageWords.includes(start) ? 1 : 0;
}

/** What a screen holds at once, and the rest when that is painted, unless something else is looked for by then. @param {URL} root @param {Entry[]} found @param {string} query */
async function show(root, found, query) {
  count.textContent = query.trim() ? say("search_found", { count: found.length }) : "";
  const rows = (/** @type {Entry[]} */ some) => some.map((entry) => rowOf(root, entry));
  const first = rows(found.slice(0, AT_ONCE));
  list.replaceChildren(...first);
  await painted();
  if (first.length && list.firstChild === first[0]) list.append(...rows(found.slice(AT_ONCE, MOST)));
}

/** @param {URL} root @param {Entry} entry */
function rowOf(root, entry) {
  /** @type {Record<string, string>} */ const about = entry.to.startsWith(NUMBERS) ? { "data-figure": entry.to.split("#")[1] ?? "" } : {};
  return element("li", {}, element("a", { href: new URL(entry.to, root).href, ...about }, element("strong", {}, entry.title), entry.page));
}

/** What the numbers found are today, a moment after they are found. @param {Plan} plan */
async function tellFigures(plan) {
  const links = /** @type {HTMLElement[]} */ ([...list.querySelectorAll("[data-figure]")]);
  if (!links.length) return;
  await breathe();
  if (!links[0].isConnected) return;
  const formulas = await loaded(plan);
  await plan.prepare(formulas);
  const [{ values }, show] = [plan.compute(formulas).day, shower(formulas)];
  for (const link of links) {
    const [id, value] = [link.dataset.figure ?? "", values[link.dataset.figure ?? ""]];
    if (value !== undefined) link.firstElementChild?.after(element("b", {}, show(id, value, plan.system(), "both")), " ");
  }
}
