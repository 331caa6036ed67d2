/**
 * What a formula uses, read from its own text, `v.name`: written out beside it, the same names would weigh as much as a
 * station's page.
 *
 * @typedef {import("./running.js").Step} Step
 * @typedef {import("./running.js").Watch} Watch
 */

/** Each name once, in the order written. @param {Function[]} formulas */
const namesIn = (...formulas) => [...new Set(formulas.flatMap((formula) => [...String(formula).matchAll(/\bv\.(\w+)/g)].map(([, name]) => name)))];

/** The settings and results that each result uses. @param {Record<string, Step>} steps @returns {Record<string, string[]>} */
export const usesOf = (steps) => Object.fromEntries(Object.entries(steps).map(([name, { formula, require = [] }]) => [name, namesIn(formula, ...require.map(({ that }) => that))]));

/** @param {Record<string, Watch["when"]>} conditions @returns {Record<string, Watch>} */
export const watching = (conditions) => Object.fromEntries(Object.entries(conditions).map(([name, when]) => [name, { uses: namesIn(when), when }]));
