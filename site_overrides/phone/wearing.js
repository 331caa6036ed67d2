// Style sheets that not every page has: a page has its own inside or asks for them, and a part that needs one brings it along.

/** Addresses of the sheets that a page read from `address` has. @param {Document} page @param {string} address */
export const sheetsOf = (page, address) => {
  const sheets = /** @type {NodeListOf<HTMLElement>} */ (page.querySelectorAll("link[rel=stylesheet], style[data-sheet]"));
  return [...sheets].map((sheet) => new URL(sheet.dataset.sheet ?? sheet.getAttribute("href") ?? "", address).href);
};

/** Resolves when these sheets are here, or cannot be had. @param {string[]} addresses */
export async function wear(addresses) {
  const worn = new Set([...document.styleSheets].map(({ href, ownerNode }) => href ?? /** @type {HTMLElement} */ (ownerNode).dataset.sheet));
  await Promise.all(addresses.filter((href) => !worn.has(href)).map((href) => new Promise((done) => {
    const link = Object.assign(document.createElement("link"), { rel: "stylesheet", href, onload: done, onerror: done });
    document.head.append(link);
  })));
}

/** Sheets inside the page name their addresses from where it was read, which will not be where it stands. */
export function holdSheets() {
  for (const sheet of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("style[data-sheet]"))) {
    sheet.dataset.sheet = new URL(sheet.dataset.sheet ?? "", location.href).href;
  }
}
