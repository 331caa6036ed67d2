// At the top of every page that writes: that the day which goes on is of another date, and the way out of it.

import { element } from "./element.js";
import { beginRun, dateOf, isPast, openRun } from "./runs.js";
import { watchWhileShown } from "./ticks.js";
import { say } from "./words_said.js";

/** @param {import("./logging.js").Page} page */
export function mountStaleDay(page) {
  const title = document.querySelector("h1");
  if (!title || !document.querySelector("[data-log], [data-list], [data-readings], [data-new-run]")) return;
  const words = element("span", {});
  const button = element("button", { type: "button", class: "button" }, say("run_new"));
  const notice = element("div", { class: "list-changed", role: "status", hidden: "", "data-stale": "" }, words, " ", button);
  button.addEventListener("click", () => beginRun(page));
  title.after(notice);
  const paint = () => {
    const run = openRun(page.store);
    words.textContent = run && isPast(run) ? say("run_stale", { day: dateOf(run) }) : "";
    notice.hidden = !words.textContent;
  };
  const lookAgain = () => (notice.isConnected ? paint() : document.removeEventListener("visibilitychange", lookAgain));
  document.addEventListener("visibilitychange", lookAgain); // the night may have passed meanwhile
  paint();
  watchWhileShown(page.store, notice, paint, /^(state|run)\//);
}
