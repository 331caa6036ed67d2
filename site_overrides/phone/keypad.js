// A keypad for wet fingers: large keys, no system keyboard that covers half the screen.

import { element } from "./element.js";
import { press } from "./reading_items.js";
import { tell } from "./log_words.js";

const KEYS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "back"];
/** @type {Record<string, string>} */ const SIGNS = { ".": ".", back: "⌫" };

/** @param {string} unit @param {boolean} signed @param {string} start */
export function makeKeypad(unit, signed, start = "") {
  let typed = start;
  const shown = element("output", { class: "keypad__shown", "aria-label": tell("typed") });
  const pad = element("div", { class: "keypad" });
  const paint = () => {
    shown.textContent = `${typed.replace("-", "−") || "–"} ${unit}`;
  };
  const put = (/** @type {string} */ key) => {
    typed = press(typed, key);
    paint();
  };
  /** @type {Record<string, string>} */ const names = { ".": tell("point"), back: tell("delete") };
  for (const key of KEYS) {
    /** @type {Record<string, string>} */ const name = names[key] ? { "aria-label": names[key] } : {};
    const button = element("button", { type: "button", class: "key", ...name }, SIGNS[key] ?? key);
    button.addEventListener("click", () => put(key));
    pad.append(button);
  }
  const sign = element("button", { type: "button", class: "key", "aria-label": tell("more") }, "+/−");
  sign.addEventListener("click", () => put("-"));
  paint();
  return {
    pad,
    /** What is typed, and beside it the key that turns its sign. */
    line: signed ? [sign, shown] : [shown],
    typed: () => typed,
    /** Digits of a real keyboard count too. @param {KeyboardEvent} event */
    take(event) {
      if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey) return;
      const key = { Backspace: "back", ",": "." }[event.key] ?? event.key;
      if (/^([0-9.]|-|back)$/.test(key)) put(key);
    },
  };
}
