// On the page of the crew: whoever stands at a place that asks for a skill they have no signature for is marked there.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { crews } from "./plan_content.js";
import { allSigned } from "./signing_page.js";
import { lacking } from "./skills_signed.js";
import { skills } from "./teaching.js";
import { tell } from "./teaching_words.js";

/** @param {import("./logging.js").Page} page @param {HTMLElement} section */
export function mountSignedMarks(page, section) {
  const { places } = crews[section.dataset.people ?? ""];
  const list = /** @type {HTMLElement} */ (section.querySelector("[data-people-list]"));
  const paint = () => {
    const signed = allSigned(page);
    for (const row of /** @type {NodeListOf<HTMLElement>} */ (list.querySelectorAll("[data-person]"))) {
      const jobs = [...row.querySelectorAll("select")].flatMap(({ value: place }) => [places[place]?.procedure ?? "", ...(places[place]?.also ?? [])]);
      const missing = new Set(jobs.flatMap((job) => lacking(signed, skills, row.dataset.person ?? "", job, Date.now())));
      mark(row, Object.keys(skills).filter((skill) => missing.has(skill)).map((skill) => skills[skill].title));
    }
  };
  const later = () => void setTimeout(paint);  // the rows themselves are painted first
  later();
  watchWhileShown(page.store, section, later);
}

/** @param {HTMLElement} row @param {string[]} titles */
function mark(row, titles) {
  const old = row.querySelector(".person__lacks");
  if (!titles.length) return old?.remove();
  const words = tell("sign_lacks", { skills: titles.join(", ") });
  if (old) old.textContent = words;
  else row.append(element("p", { class: "person__lacks" }, words));
}
