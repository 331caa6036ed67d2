// A sheet that comes up from the foot of the screen over whatever page is open.

import { element } from "./element.js";
import { tell } from "./log_words.js";

/** @typedef {ReturnType<typeof openSheet>} Sheet */

/** @param {string} title @param {(Node | string)[]} content */
export function openSheet(title, content) {
  const back = element("button", { type: "button", class: "button" }, tell("cancel"));
  const head = element("div", { class: "sheet__top" }, element("h2", { id: "sheet-title" }, title), back);
  const body = element("div", { class: "sheet__body" }, ...content);
  const dialog = element("dialog", { class: "sheet-over", "aria-labelledby": "sheet-title" }, head, body);
  /** @type {((event: KeyboardEvent) => void) | undefined} */ let onKey;
  dialog.addEventListener("keydown", (event) => onKey?.(event));
  dialog.addEventListener("close", () => dialog.remove());
  back.addEventListener("click", () => dialog.close());
  document.body.append(dialog);
  dialog.showModal();
  return {
    add: (/** @type {(Node | string)[]} */ ...more) => body.append(...more),
    /** Puts other content in the place of what was there. @param {string} words @param {(Node | string)[]} more */
    turn(words, ...more) {
      head.firstElementChild?.replaceChildren(words);
      body.replaceChildren(...more);
      onKey = undefined;
      dialog.scrollTop = 0;
    },
    /** While a tap is being answered no second one counts. @param {boolean} is */
    busy: (is) => body.toggleAttribute("inert", is),
    onKey: (/** @type {(event: KeyboardEvent) => void} */ act) => (onKey = act),
    close: () => dialog.close(),
  };
}
