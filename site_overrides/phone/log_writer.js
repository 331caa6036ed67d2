// Who holds this phone, and which lot is worked on.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { people } from "./log_content.js";
import { tell } from "./log_words.js";
import { currentLot, knownLots, nextLot, setLot } from "./lots.js";
import { setWho } from "./log.js";
import { namesKnown } from "./people.js";
import { tidy } from "./typed_text.js";

/** @typedef {import("./logging.js").Page} Page */

const OTHER = "\n";

/** @param {Page} page @param {HTMLSelectElement} who @param {HTMLSelectElement} lot */
export function mountWriter(page, who, lot) {
  const { store, log } = page;
  who.addEventListener("change", () => {
    const name = who.value === OTHER ? tidy(prompt(tell("who_ask")) ?? log.who(), 60) : who.value;
    setWho(store, name);
    paint();
  });
  lot.addEventListener("change", () => {
    const lots = knownLots(page);
    const name = lot.value === OTHER ? tidy(prompt(tell("lot_ask"), nextLot(lots)) ?? "", 30) : lot.value;
    if (name) setLot(page, name);
    paint();
  });
  const paint = () => {
    const names = [...new Set([...namesKnown(store, people), log.who()])].filter(Boolean);
    fill(who, [["", tell("who_nobody")], ...names.map((name) => [name, name]), [OTHER, tell("who_other")]], log.who());
    fill(lot, [...knownLots(page).map((name) => [name, name]), [OTHER, tell("lot_new")]], currentLot(page));
  };
  paint();
  watchWhileShown(store, who, paint, /^(log|state|run|lot|person|setting)\//);
}

/** @param {HTMLSelectElement} select @param {string[][]} options @param {string} chosen */
function fill(select, options, chosen) {
  const now = [...select.options].map(({ value }) => value).join();
  if (now !== options.map(([value]) => value).join()) select.replaceChildren(...options.map(([value, words]) => element("option", { value }, words)));
  if (select.value !== chosen) select.value = chosen;
}
