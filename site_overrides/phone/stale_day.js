// At the top of every page that writes: that the day which goes on is of another date, and the way out of it.

import { staleWords } from "./days.js";
import { element } from "./element.js";
import { beginRun, openRun } from "./runs.js";
import { watchWhileShown } from "./ticks.js";
import { say } from "./words_said.js";

/** @param {import("./logging.js").Page} page */
export function mountStaleDay(page) {
  const title = document.querySelector("h1");
  if (!title || !document.querySelector("[data-log], [data-list], [data-readings]") || document.querySelector("[data-run-stale]")) return;
  const words = element("span", {});
  const button = element("button", { type: "button", class: "button" }, say("run_new"));
  const notice = element("div", { class: "list-changed", role: "status", hidden: "", "data-stale": "" }, words, " ", button);
  button.addEventListener("click", () => beginRun(page));
  title.after(notice);
  const paint = () => {
    words.textContent = openRun(page.store) ? staleWords(page) : "";
    notice.hidden = !words.textContent;
  };
  const lookAgain = () => (notice.isConnected ? paint() : document.removeEventListener("visibilitychange", lookAgain));
  document.addEventListener("visibilitychange", lookAgain); // the night may have passed meanwhile
  paint();
  watchWhileShown(page.store, notice, paint, /^(state|run)\//);
}
