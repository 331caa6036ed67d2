// The end of the day: somebody signs, and from then on the record is only read and shared.

import { tell } from "./log_words.js";
import { endRun, runOf } from "./runs.js";
import { watchWhileShown } from "./ticks.js";
import { tidy } from "./typed_text.js";

/** @typedef {import("./logging.js").Page} Page */

/** @param {Page} page @param {HTMLFormElement} form */
export function mountClosing(page, form) {
  const field = /** @type {HTMLInputElement} */ (form.querySelector("input"));
  field.value = page.log.who();
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const who = tidy(field.value, 60);
    if (!who) return field.focus();
    if (!confirm(tell("close_ask"))) return;
    const { saved } = await page.log.add(page.run(), { kind: "sign", who, text: tell("closed") });
    if (saved) endRun(page.store, page.run());
  });
  const paint = () => {
    const run = runOf(page.store, page.run());
    for (const part of form.elements) /** @type {HTMLInputElement} */ (part).disabled = !run || Boolean(run.ended);
  };
  paint();
  watchWhileShown(page.store, form, paint, /^(state|run)\//);
}
