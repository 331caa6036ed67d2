// Drawings of numbers, in SVG that reads on a narrow phone. Colours and type are the style sheet's. Drawings are told
// first and put on the page at last, where only what is not yet as told is changed.

import { write } from "./changing.js";

/** @typedef {{name: string, attributes: Record<string, string | number>, inside: (Shape | string)[]}} Shape  words stand alone inside theirs */

const SPACE = "http://www.w3.org/2000/svg";
export const WIDTH = 360;

/** @param {string} name @param {Shape["attributes"]} attributes @param {...(Shape | string)} inside @returns {Shape} */
export const shape = (name, attributes, ...inside) => ({ name, attributes, inside });

/** @param {Shape} told @returns {SVGElement} */
export function drawn({ name, attributes, inside }) {
  const element = /** @type {SVGElement} */ (document.createElementNS(SPACE, name));
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  element.append(...inside.map((part) => (typeof part === "string" ? part : drawn(part))));
  return element;
}

/** What was last drawn in a place: to ask the page costs more. @type {WeakMap<Element, (Shape | string)[]>} */
const last = new WeakMap();

/** Draws what is told in a place of its own. @param {Element} place @param {Shape[]} told */
export function draw(place, told) {
  change(place, last.get(place) ?? [], told);
  last.set(place, told);
}

/** @param {Element} place @param {(Shape | string)[]} before @param {(Shape | string)[]} told */
function change(place, before, told) {
  told.forEach((part, at) => {
    const old = before[at];
    if (part === old) return;
    if (typeof part === "string") write(place, part);
    else if (old === undefined) place.append(drawn(part));
    else if (typeof old === "string" || !isLike(old, part)) place.childNodes[at].replaceWith(drawn(part));
    else changeShape(place.children[at], old, part);
  });
  for (let left = before.length; left > told.length; left -= 1) place.lastChild?.remove();
}

/** @param {Element} element @param {Shape} old @param {Shape} told */
function changeShape(element, old, told) {
  for (const key in told.attributes) if (told.attributes[key] !== old.attributes[key]) element.setAttribute(key, String(told.attributes[key]));
  change(element, old.inside, told.inside);
}

/** @param {Shape} one @param {Shape} other */
const isLike = (one, other) => one.name === other.name && Object.keys(one.attributes).join() === Object.keys(other.attributes).join();

/** @param {number} x @param {number} y @param {string} words @param {string} [look] @param {"start" | "middle" | "end"} [anchor] */
export function label(x, y, words, look = "", anchor = "start") {
  return shape("text", { x: round(x), y: round(y), class: `drawn__words ${look}`, "text-anchor": anchor }, words);
}

/** A drawing with a title and a description for those who cannot see it. @param {string} id @param {string} title @param {string} description @param {number} height @param {Shape[]} inside */
export function drawing(id, title, description, height, inside) {
  const names = { "aria-labelledby": `${id}-title`, "aria-describedby": `${id}-words` };
  return shape("svg", { viewBox: `0 0 ${WIDTH} ${round(height)}`, class: "drawn", role: "img", ...names },
    shape("title", { id: `${id}-title` }, title), shape("desc", { id: `${id}-words` }, description), ...inside);
}

/** @param {number} number */
export const round = (number) => Math.round(number * 10) / 10;

/** Maps a span of numbers to a span of the drawing. @param {number} low @param {number} high @param {number} from @param {number} to */
export const scale = (low, high, from, to) => (/** @type {number} */ number) => from + ((number - low) / (high - low || 1)) * (to - from);

/** Round numbers in a span, some `count` of them. @param {number} low @param {number} high @param {number} count @param {number[]} [sizes] steps that are round; by default one, two and five */
export function ticks(low, high, count, sizes) {
  const rough = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (sizes ?? [1, 2, 5, 10].map((lead) => lead * power)).find((size) => size >= rough * 0.999) ?? (sizes?.at(-1) || rough);
  const first = Math.ceil(low / step - 1e-9);
  return Array.from({ length: Math.max(0, Math.floor(high / step + 1e-9) - first + 1) }, (_, place) => (first + place) * step);
}

/** How wide some words are drawn, about. @param {string} words */
export const widthOf = (words) => words.length * 7.8;
