// A sheet that comes up from the foot of the screen over whatever page is open.
//
// A modal dialog styles the whole page anew before it shows. Here the tap is answered first, and the page behind sleeps a
// moment later; until then a shade takes what is tapped beside the sheet.

import { element } from "./element.js";
import { tell } from "./log_words.js";

/** @typedef {ReturnType<typeof openSheet>} Sheet */

const SOON = 100; // milliseconds: what was tapped is on the screen by then
const SECOND_TAP = 400; // milliseconds within which a second tap was meant for what stood there before

/** @param {string} title @param {(Node | string)[]} content @param {() => void} [closed]  follows when it is closed, however that is done */
export function openSheet(title, content, closed) {
  const back = element("button", { type: "button", class: "button" }, tell("cancel"));
  const head = element("div", { class: "sheet__top" }, element("h2", { id: "sheet-title" }, title), back);
  const body = element("div", { class: "sheet__body" }, ...content);
  const foot = element("div", { class: "sheet__foot" });
  const dialog = element("dialog", { class: "sheet-over", "aria-labelledby": "sheet-title", "aria-modal": "true" }, head, body, foot);
  const shade = element("div", { class: "sheet-shade" });
  const opener = /** @type {HTMLElement | null} */ (document.activeElement);
  /** @type {((event: KeyboardEvent) => void) | undefined} */ let onKey;
  dialog.addEventListener("keydown", (event) => onKey?.(event));
  const escape = (/** @type {KeyboardEvent} */ event) => event.key === "Escape" && !document.querySelector("dialog:modal") && close();
  document.addEventListener("keydown", escape);
  back.addEventListener("click", close);
  document.body.append(shade, dialog);
  dialog.show();
  swallowTaps();
  setTimeout(layPageToSleep, SOON);

  function close() {
    document.removeEventListener("keydown", escape);
    dialog.remove();
    shade.remove();
    swallowTaps();
    closed?.();
    setTimeout(() => layPageToSleep() || opener?.focus({ preventScroll: true }), SOON);
  }

  return {
    add: (/** @type {(Node | string)[]} */ ...more) => body.append(...more),
    /** What stays in sight at the foot, however far the rest is moved. @param {(Node | string)[]} more */
    rest: (...more) => foot.append(...more),
    /** Puts other content in the place of what was there. @param {string} words @param {(Node | string)[]} more */
    turn(words, ...more) {
      head.firstElementChild?.replaceChildren(words);
      body.replaceChildren(...more);
      foot.replaceChildren();
      onKey = undefined;
      dialog.scrollTop = 0;
      swallowTaps();
    },
    /** While a tap is being answered no second one counts. @param {boolean} is */
    busy: (is) => [body, foot].forEach((part) => part.toggleAttribute("inert", is)),
    onKey: (/** @type {(event: KeyboardEvent) => void} */ act) => (onKey = act),
    close,
  };
}

/** @param {string} words @param {() => void} act */
export function largeButton(words, act) {
  const button = element("button", { type: "button", class: "button button--large" }, words);
  button.addEventListener("click", act);
  return button;
}

/** What comes to lie under a finger that taps twice does not take the second tap. */
function swallowTaps() {
  const guard = element("div", { class: "tap-guard" });
  document.body.append(guard);
  setTimeout(() => guard.remove(), SECOND_TAP);
}

/** While a sheet is open nothing else can be reached; dialogs that open over it are no part of the page. */
function layPageToSleep() {
  const isCovered = document.querySelector(".sheet-over") !== null;
  for (const part of document.body.children) if (!part.matches("dialog, .sheet-shade, .tap-guard")) part.toggleAttribute("inert", isCovered);
  return isCovered;
}
