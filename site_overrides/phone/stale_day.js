// At the top of every page that writes: that the day which goes on is of another date, and the way out of it. Where a list is
// worked through ahead, also that what was ticked on an earlier date is for that day: if it was put off, it is done again.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { beginAnew, dateOf, dayName, isAheadHere, isPast, openRun, runOf } from "./runs.js";
import { say } from "./words_said.js";

/** @param {import("./logging.js").Page} page */
export function mountStaleDay(page) {
  const title = document.querySelector("h1");
  if (!title || !document.querySelector("[data-log], [data-list], [data-readings], [data-new-run]")) return;
  const words = element("span", {});
  const button = element("button", { type: "button", class: "button" }, say("run_new"));
  const notice = element("div", { class: "list-changed", role: "status", hidden: "", "data-stale": "" }, words, " ", button);
  const isAhead = isAheadHere();
  button.addEventListener("click", () => beginAnew(page, isAhead));
  title.after(notice);
  const paint = () => {
    const run = openRun(page.store);
    const isOld = dayName(new Date(runOf(page.store, run)?.begun ?? Date.now())) < dayName(new Date());
    const word = run && isPast(run) ? "run_stale" : run && isAhead && isOld ? "run_ahead" : "";
    words.textContent = word && say(word, { day: dateOf(run) });
    notice.hidden = !words.textContent;
  };
  const lookAgain = () => (notice.isConnected ? paint() : document.removeEventListener("visibilitychange", lookAgain));
  document.addEventListener("visibilitychange", lookAgain); // the night may have passed meanwhile
  paint();
  watchWhileShown(page.store, notice, paint, /^(state|run)\//);
}
