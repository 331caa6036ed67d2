// When a thing was noted: now, or earlier, as somebody says who saw it.

import { element } from "./element.js";
import { tell } from "./log_words.js";
import { clock } from "./words_said.js";

const MINUTE = 60_000;
const EARLIER = [5, 15, 30];

/**
 * The ways to say when. A correction is not offered the present.
 * @param {(at?: number) => void} keep @param {HTMLElement} refused @param {number} [was]  when a corrected one was
 */
export function markTimes(keep, refused, was) {
  const now = Date.now();
  const field = element("input", { type: "time", id: "mark-time" });
  if (was !== undefined) field.value = clock(was).padStart(5, "0");
  const form = element("form", { class: "sheet__other" }, element("label", { for: "mark-time" }, tell("mark_time")), field, element("button", { type: "submit", class: "button" }, tell("keep")));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const at = timeToday(field.value, Date.now());
    refused.hidden = at !== null;
    refused.textContent = at === null ? tell("mark_time_wrong") : "";
    if (at !== null) keep(at);
  });
  if (was !== undefined) return [form];
  const earlier = EARLIER.map((minutes) => button("button", tell("mark_ago", { minutes, time: clock(now - minutes * MINUTE) }), () => keep(Date.now() - minutes * MINUTE)));
  return [button("button button--large", tell("now", { time: clock(now) }), () => keep()), element("h3", {}, tell("mark_earlier")), element("div", { class: "row" }, ...earlier), form];
}

/** @param {string} kind @param {string} words @param {() => void} act */
function button(kind, words, act) {
  const made = element("button", { type: "button", class: kind }, words);
  made.addEventListener("click", act);
  return made;
}

/** A time of this day as a field gives it; null where it is none, or has not come yet. @param {string} text @param {number} now */
export function timeToday(text, now) {
  const [hours, minutes] = text.split(":").map(Number);
  const at = new Date(now).setHours(hours, minutes, 0, 0);
  return at <= now ? at : null;
}
