// The record on its way out of the phone: as a file, through the phone's own share sheet, and how much has not left yet.

import { isOnHomeScreen } from "./home_screen.js";
import { inOrder, phoneOf, toFile } from "./records.js";
import { toTable } from "./record_table.js";
import { trainingRun } from "./skills_signed.js";

/** @typedef {import("./logging.js").Page} Page */

/** What goes out with a run: its entries, and what was signed on its date when no day went on. @param {Page} page @param {string} run */
export const outgoing = ({ log }, run) => [...log.of(run).all(), ...(run ? log.of(trainingRun(run.slice(0, 10))).all() : [])];

/** How many entries are this phone's own: what others gave it they still have. @param {Page} page @param {string} run */
const ownOf = (page, run) => outgoing(page, run).filter((entry) => entry.kind !== "merge" && phoneOf(entry) === page.log.phone()).length;

/** How many entries of a run have not left this phone. @param {Page} page @param {string} run */
export const unsent = (page, run) => Math.max(0, ownOf(page, run) - (page.store.get(`sent/${run}`)?.count ?? 0));

/** Remembers that all that is written down now has left. @param {Page} page @param {string} run @param {number} count */
export const markSent = ({ store }, run, count) => store.put(`sent/${run}`, { at: Date.now(), count });

/** @param {Page} page @param {string} run @param {string} version */
export function recordFile(page, run, version) {
  const entries = outgoing(page, run);
  return { count: ownOf(page, run), text: toFile({ phone: page.log.phone(), now: Date.now() }, entries, version) };
}

/** @param {Page} page @param {string} run */
export const tableFile = (page, run) => toTable(inOrder(outgoing(page, run)));

/**
 * Not every phone lets a `.json` through its share sheet; as plain text it passes everywhere.
 * @param {string} name @param {string} text @returns {File | null} null where files cannot be shared at all
 */
export function shareable(name, text) {
  const kinds = [["json", "application/json"], ["txt", "text/plain"]].map(([ending, type]) => new File([text], `${name}.${ending}`, { type }));
  return kinds.find((file) => navigator.canShare?.({ files: [file] })) ?? null;
}

/**
 * Lets the link that is tapped save a text under a name. On an iPhone's home screen no link can: there the share sheet does.
 * @param {MouseEvent} event @param {string} name @param {string} type @param {string} text @returns {Promise<boolean>} whether it left
 */
export async function saveAs(event, name, type, text) {
  const file = new File([text], name, { type });
  if (isOnHomeScreen && navigator.canShare?.({ files: [file] })) {
    event.preventDefault();
    return navigator.share({ files: [file] }).then(() => true, () => false);
  }
  const link = /** @type {HTMLAnchorElement} */ (event.currentTarget);
  if (link.href.startsWith("blob:")) URL.revokeObjectURL(link.href);
  link.href = URL.createObjectURL(file);
  link.download = name;
  return true;
}
