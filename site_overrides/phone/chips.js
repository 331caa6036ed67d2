// A few things of which one is chosen with one tap.

import { element } from "./element.js";

/**
 * @param {string} title @param {[string, string][]} options  what each stands for, and its words
 * @param {string} chosen @param {(option: string) => void} choose
 */
export function chips(title, options, chosen, choose) {
  const group = element("div", { class: "chips", role: "group", "aria-label": title }, element("span", { class: "chips__title" }, title));
  const buttons = options.map(([option, words]) => {
    const button = element("button", { type: "button", class: "chip", "aria-pressed": String(option === chosen) }, words);
    button.addEventListener("click", () => {
      for (const other of buttons) other.setAttribute("aria-pressed", String(other === button));
      choose(option);
    });
    return button;
  });
  group.append(...buttons);
  return group;
}
