// Which words of a sentence are hidden, and in which order: those that carry the most first. Touches nothing.

/** @typedef {{text: string, word: boolean, turn: number}} Piece  `turn` counts from 1; nought is never hidden */

const WORDS = /[\p{L}\p{N}°’'-]+/gu;

/** A sentence in pieces; longer words, and numbers, have earlier turns. @param {string} sentence @returns {Piece[]} */
export function piecesOf(sentence) {
  /** @type {Piece[]} */ const pieces = [];
  let end = 0;
  for (const found of sentence.matchAll(WORDS)) {
    if (found.index > end) pieces.push({ text: sentence.slice(end, found.index), word: false, turn: 0 });
    pieces.push({ text: found[0], word: true, turn: 0 });
    end = found.index + found[0].length;
  }
  if (end < sentence.length) pieces.push({ text: sentence.slice(end), word: false, turn: 0 });
  const words = pieces.filter(({ word }) => word);
  const heaviest = [...words].sort((one, other) => weightOf(other.text) - weightOf(one.text));
  heaviest.forEach((piece, place) => (piece.turn = place + 1));
  return pieces;
}

/** @param {string} word */
const weightOf = (word) => (/\p{N}/u.test(word) ? 100 : word.length);
