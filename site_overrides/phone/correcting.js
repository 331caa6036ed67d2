// A wrong entry is corrected or taken back, never erased: both stay.

import { element } from "./element.js";
import { keepRemark, takeBack } from "./keeping_entries.js";
import { items, makeTeller, tell, titleOf } from "./log_words.js";
import { notSaved } from "./reading_answer.js";
import { openReading } from "./reading_sheet.js";
import { runOf } from "./runs.js";
import { largeButton, openSheet } from "./sheet.js";
import { tidy } from "./typed_text.js";
import { clock } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page @typedef {import("./records.js").Entry} Entry */

/** Whether an entry can still be corrected here. @param {Page} page @param {Entry} entry */
export const isOpen = (page, entry) => entry.run === page.run() && !runOf(page.store, entry.run)?.ended && ["reading", "count", "mark", "remark", "action", "sign"].includes(entry.kind);

/** @param {Page} page @param {Entry} entry */
export async function openCorrection(page, entry) {
  const teller = await makeTeller(page);
  const title = entry.of ? titleOf(entry.of) : tell("correct");
  const what = [title, teller.written(entry), clock(entry.at)].filter(Boolean).join(", ");
  const sheet = openSheet(title, [element("p", {}, what)]);
  const back = largeButton(tell("take_back"), async () => {
    sheet.busy(true);
    const { saved } = await takeBack(page, entry);
    sheet.busy(false);
    if (saved) sheet.close();
    else sheet.turn(title, notSaved());
  });
  if (entry.kind === "remark") sheet.add(remarkForm(page, entry, sheet));
  if (entry.of && items[entry.of] && entry.kind !== "action") {
    sheet.add(largeButton(tell("correct"), () => {
      sheet.close();
      openReading(page, entry.of ?? "", { instead: entry });
    }));
  }
  sheet.add(back);
}

/** @param {Page} page @param {Entry} entry @param {import("./sheet.js").Sheet} sheet */
function remarkForm(page, entry, sheet) {
  const field = element("textarea", { rows: "3", maxlength: "500", id: "remark-again" }, entry.text ?? "");
  const form = element("form", {}, element("label", { for: "remark-again" }, tell("correcting", { value: entry.text ?? "", time: clock(entry.at) })), field, element("button", { class: "button button--large" }, tell("keep")));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const text = tidy(field.value, 500);
    if (!text) return field.focus();
    const kept = await keepRemark(page, text, entry);
    if (kept?.saved) sheet.close();
    else sheet.turn(tell("correct"), notSaved());
  });
  return form;
}
