// Of which day something is that is done ahead of it: lists of the evening before are ticked on another date than the day's.

import { element } from "./element.js";
import { tell } from "./log_words.js";
import { dayName } from "./runs.js";
import { largeButton, openSheet } from "./sheet.js";
import { date } from "./words_said.js";

const NOON = 12;

/** The name of the day that somebody chooses; empty where nobody does. @returns {Promise<string>} */
export const askDay = () => new Promise((chosen) => {
  const now = new Date();
  const tomorrow = new Date(now.getFullYear(), now.getMonth(), now.getDate() + 1, NOON);
  const sheet = openSheet(tell("day_title"), [element("p", {}, tell("day_help"))], () => chosen(""));
  const choose = (/** @type {string} */ day) => {
    chosen(day);
    sheet.close();
  };
  const offer = (/** @type {string} */ word, /** @type {Date} */ day) => largeButton(tell(word, { day: date(day.getTime()) }), () => choose(dayName(day)));
  const offers = [offer("day_tomorrow", tomorrow), offer("day_today", now)];
  sheet.add(...(now.getHours() < NOON ? offers.reverse() : offers), otherDay(choose, dayName(now)));
});

/** @param {(day: string) => void} choose @param {string} first */
function otherDay(choose, first) {
  const field = element("input", { type: "date", id: "which-day", min: first, required: "" });
  const form = element("form", { class: "sheet__other" }, element("label", { for: "which-day" }, tell("day_other")), field, element("button", { class: "button" }, tell("keep")));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    choose(field.value);
  });
  return form;
}
