// One question on the page: choose one, or tap the steps in their order; then why, and where it is written.

import { element } from "./element.js";
import { tell } from "./teaching_words.js";

/**
 * @typedef {import("./posing.js").Drill} Drill @typedef {import("./posing.js").Posed} Posed
 * @typedef {{drill: Drill, posed: Posed, root: string, done: (right: boolean) => void, onward: () => void}} Asking
 */

/** @param {HTMLElement} card @param {Asking} asking */
export function askIn(card, asking) {
  const title = element("h2", { class: "drill__asks" }, asking.posed.asks);
  const answers = element("ol", { class: "drill__answers" });
  const told = element("div", { class: "drill__told", role: "status" });
  const drawing = element("figure", { class: "drawing" });
  const help = asking.drill.arrange ? [element("p", { class: "quiet" }, tell("drill_arrange"))] : [];
  card.replaceChildren(title, ...(asking.drill.picture ? [drawing] : []), ...help, answers, told);
  if (asking.drill.picture) draw(drawing, asking.drill.picture);
  (asking.drill.arrange ? arrangeIn : chooseIn)(answers, told, asking);
}

/** @param {HTMLElement} place @param {string} picture */
async function draw(place, picture) {
  const { drawings } = await import("./drill_drawings.js");
  const found = new DOMParser().parseFromString(drawings[picture], "image/svg+xml").documentElement;
  place.replaceChildren(document.importNode(found, true));
}

/** @param {HTMLElement} answers @param {HTMLElement} told @param {Asking} asking */
function chooseIn(answers, told, asking) {
  for (const choice of asking.posed.choices) {
    const button = element("button", { type: "button", class: "drill__answer", "data-answer": choice.id }, choice.says);
    button.addEventListener("click", () => {
      for (const other of answers.querySelectorAll("button")) {
        other.disabled = true;
        const right = asking.posed.choices.find(({ id }) => id === other.dataset.answer)?.right;
        if (right) other.classList.add("drill__answer--right");
      }
      if (!choice.right) button.classList.add("drill__answer--wrong");
      finish(told, asking, choice.right, choice.right ? "" : choice.why);
    });
    answers.append(element("li", {}, button));
  }
}

/** @param {HTMLElement} answers @param {HTMLElement} told @param {Asking} asking */
function arrangeIn(answers, told, asking) {
  /** @type {HTMLButtonElement[]} */ let placed = [];
  const wanted = (asking.drill.arrange ?? []).map(([id]) => id);
  const number = () => {
    for (const button of answers.querySelectorAll("button")) {
      const place = placed.indexOf(button) + 1;
      button.dataset.place = place ? String(place) : "";
      button.setAttribute("aria-pressed", String(place > 0));
    }
  };
  for (const choice of asking.posed.choices) {
    const button = element("button", { type: "button", class: "drill__answer drill__answer--step", "data-answer": choice.id }, choice.says);
    button.addEventListener("click", () => {
      placed = placed.includes(button) ? placed.filter((other) => other !== button) : [...placed, button];
      number();
      if (placed.length === wanted.length) judge();
    });
    answers.append(element("li", {}, button));
  }
  number();

  function judge() {
    const right = placed.every((button, place) => button.dataset.answer === wanted[place]);
    const rows = placed.map((button, place) => {
      button.classList.add(button.dataset.answer === wanted[place] ? "drill__answer--right" : "drill__answer--wrong");
      button.disabled = true;
      return button;
    });
    rows.sort((one, other) => wanted.indexOf(one.dataset.answer ?? "") - wanted.indexOf(other.dataset.answer ?? ""));
    answers.replaceChildren(...rows.map((button) => element("li", {}, button)));
    finish(told, asking, right, right ? "" : tell("drill_right_order"));
  }
}

/** @param {HTMLElement} told @param {Asking} asking @param {boolean} right @param {string} note */
function finish(told, { drill, posed, root, done, onward }, right, note) {
  done(right);
  const button = element("button", { type: "button", class: "button button--large", "data-onward": "" }, tell("drill_next"));
  button.addEventListener("click", onward);
  told.replaceChildren(
    element("p", { class: right ? "drill__right" : "drill__wrong" }, element("strong", {}, tell(right ? "drill_yes" : "drill_no")), ...(note ? [` ${note}`] : [])),
    element("p", {}, posed.why),
    element("p", { class: "quiet" }, `${tell("drill_written")} `, element("a", { href: root + drill.address }, drill.title), ...(drill.sources?.length ? [`. ${tell("drill_source")} ${drill.sources.join("; ")}`] : [])),
    button,
  );
  button.scrollIntoView({ block: "nearest" });
}
