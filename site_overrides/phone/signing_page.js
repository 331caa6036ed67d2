// Sign-off: a person is chosen, the trainer gives a name, and each skill that was seen is signed as an entry of the record.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { namesKnown } from "./people.js";
import { toFile } from "./records.js";
import { dayName, runOf } from "./runs.js";
import { saveAs, shareable } from "./sending.js";
import { signatureOf, signatures, trainingRun } from "./skills_signed.js";
import { people, skills } from "./teaching.js";
import { tell } from "./teaching_words.js";
import { tidy } from "./typed_text.js";

/** @typedef {import("./logging.js").Page} Page */

const dates = new Intl.DateTimeFormat(document.documentElement.lang || undefined, { day: "numeric", month: "long", year: "numeric" });

/** A day with its year; nothing for one that never comes. @param {number} when */
const date = (when) => (Number.isFinite(when) ? dates.format(when) : "");

/** Every signature on this phone. @param {Page} page */
export const allSigned = ({ log }) => signatures(log.runs().flatMap((run) => log.of(run).all()), skills);

/** A name without hidden characters and stray spaces. @param {string} text */
const clean = (text) => tidy(text, 60);

/** The names of all who are here, and of all who were ever signed off. @param {Page} page */
function everyone(page) {
  const signed = allSigned(page).map(({ name }) => name ?? "");
  return [...new Set([...namesKnown(page.store, people), ...signed])].sort();
}

/** @param {Page} page @param {HTMLElement} place */
export function mountSigning(page, place) {
  const part = (/** @type {string} */ name) => /** @type {any} */ (place.querySelector(`[data-sign-${name}]`));
  part("by").value ||= page.log.who(); // a name may have been typed before anyone listened
  part("names").append(...everyone(page).map((name) => element("option", { value: name })));
  const paint = () => paintSkills(page, place, clean(part("for").value));
  for (const event of ["input", "change"]) part("for").addEventListener(event, paint);
  for (const row of /** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll("[data-skill]"))) {
    const now = /** @type {HTMLButtonElement} */ (row.querySelector("[data-sign]"));
    now.addEventListener("click", () => sign(page, place, row.dataset.skill ?? ""));
    now.disabled = false;
    /** @type {HTMLElement} */ (row.querySelector("[data-unsign]")).addEventListener("click", () => takeBack(page, row.dataset.skill ?? "", clean(part("for").value)));
  }
  part("send").addEventListener("click", () => send(page));
  paint();
  watchWhileShown(page.store, place, paint);
}

/** The run that a signature goes into: the day's, or one for the day's training. @param {Page} page */
function runFor(page) {
  const run = runOf(page.store, page.run());
  const today = dayName(new Date());
  return run && !run.ended && page.run().startsWith(today) ? page.run() : trainingRun(today);
}

/** @param {Page} page @param {HTMLElement} place @param {string} skill */
async function sign(page, place, skill) {
  const [person, by] = ["for", "by"].map((name) => /** @type {HTMLInputElement} */ (place.querySelector(`[data-sign-${name}]`)));
  for (const field of [person, by]) if (!clean(field.value)) return field.focus();
  const same = clean(person.value).toLowerCase() === clean(by.value).toLowerCase();
  const words = /** @type {HTMLElement} */ (place.querySelector("[data-sign-words]"));
  words.textContent = same ? tell("sign_not_oneself") : "";
  if (same) return by.focus();
  const [name, who] = [clean(person.value), clean(by.value)];
  const { saved } = await page.log.add(runFor(page), { kind: "sign", of: skill, name, who, text: `${name}: ${skills[skill].title}` });
  words.textContent = saved ? tell("sign_done", { name, skill: skills[skill].title }) : tell("sign_not_saved");
}

/** @param {Page} page @param {string} skill @param {string} person */
async function takeBack(page, skill, person) {
  const found = signatureOf(allSigned(page), skills, person, skill);
  if (!found || !confirm(tell("sign_take_back_ask", { name: person, skill: skills[skill].title }))) return;
  const { id, run, who } = found.entry;
  await page.log.add(run, { kind: "sign", of: skill, name: person, who, corrects: id, gone: true });
}

/** @param {Page} page @param {HTMLElement} place @param {string} person */
function paintSkills(page, place, person) {
  const signed = allSigned(page);
  const now = Date.now();
  for (const row of /** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll("[data-skill]"))) {
    const found = person ? signatureOf(signed, skills, person, row.dataset.skill ?? "") : undefined;
    const over = Boolean(found) && Number(found?.until) <= now;
    row.classList.toggle("skill--signed", Boolean(found) && !over);
    row.classList.toggle("skill--over", over);
    const words = found && { who: found.entry.who ?? "", day: date(found.entry.at), until: date(found.until) };
    const key = over ? "sign_over" : found?.until === Infinity ? "sign_for_good" : "sign_until";
    /** @type {HTMLElement} */ (row.querySelector("[data-sign-state]")).textContent = words ? tell(key, words) : tell("sign_open");
    /** @type {HTMLElement} */ (row.querySelector("[data-unsign]")).hidden = !found;
    /** @type {HTMLElement} */ (row.querySelector("[data-sign]")).textContent = found ? tell("sign_again") : tell("sign_now");
  }
  /** @type {HTMLElement} */ (place.querySelector("[data-sign-send]")).hidden = !signed.length;
}

/** All signatures as a file that the record page of another phone takes in. @param {Page} page */
async function send(page) {
  const entries = page.log.runs().flatMap((run) => page.log.of(run).all()).filter(({ kind, of }) => kind === "sign" && of !== undefined);
  const text = toFile({ phone: page.log.phone(), now: Date.now() }, entries);
  const name = `signed-${dayName(new Date())}-${page.log.phone()}`;
  const file = shareable(name, text);
  if (file) return navigator.share({ files: [file] }).catch(() => undefined);
  const link = element("a", {});
  link.addEventListener("click", (event) => saveAs(event, `${name}.json`, "application/json", text));
  link.click();
}
