// When a thing was noted: now, or earlier, as somebody says who saw it.

import { element } from "./element.js";
import { tell } from "./log_words.js";
import { clock } from "./words_said.js";

const MINUTE = 60_000;
const HALF_DAY = 12 * 60 * MINUTE;
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
    const at = timeNear(field.value, was ?? Date.now(), Date.now());
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

/**
 * The moment that a field's time of day means: less than half a day from another, so that noon is not taken for midnight,
 * and not to come; null where there is none. @param {string} text @param {number} near @param {number} now
 */
export function timeNear(text, near, now) {
  const [hours, minutes] = text.split(":").map(Number);
  const moments = [-1, 0, 1].map((days) => {
    const day = new Date(near);
    day.setDate(day.getDate() + days);
    return day.setHours(hours, minutes, 0, 0);
  });
  return moments.find((at) => at <= now && Math.abs(at - near) < HALF_DAY) ?? null;
}
