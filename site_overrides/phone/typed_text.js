// What people type or paste freely, as it goes into a record: without hidden characters, for which other phones refuse
// an entry, without stray spaces, and no longer than it may be.

/** @param {string} text @param {number} most  characters, as a record's schema counts them: no sign is cut in two */
export const tidy = (text, most) => [...text.replace(/[\p{C}\s]+/gu, " ").trim()].slice(0, most).join("").trim();
