// One page takes the place of another, so that timers, sounds and the screen's wake lock go on.
// What stands round the page stays: only the parts below are changed for those of the next page.

import { holdSheets, sheetsOf, wear } from "./wearing.js";

const PARTS = ["skip", "header-topic", "container"].map((name) => `[data-md-component=${name}]`);
const STILL = 400; // milliseconds without scrolling; browsers take only so many changes of their history
let latest = 0;

/** @param {URL} root @param {() => void} mount  what a new page needs; called when it is in place */
export function startTurning(root, mount) {
  if (location.protocol === "file:") return; // from a disk nothing can be fetched
  let shown = location.pathname;
  holdSheets();
  /** @type {number | undefined} */ let waiting;

  const go = async (/** @type {URL} */ address, /** @type {number | undefined} */ height) => {
    const mine = (latest += 1);
    const page = await fetchPage(address);
    if (mine !== latest) return;
    if (!page) return location.assign(address);
    await wear(sheetsOf(page, address.href));
    if (mine !== latest) return; // another page was asked for while the looks of this one came
    holdFast();
    if (height === undefined) history.pushState({ height: 0 }, "", address);
    shown = address.pathname;
    document.title = page.title;
    for (const part of PARTS) document.querySelector(part)?.replaceWith(/** @type {Element} */ (page.querySelector(part)));
    mount();
    if (address.hash && height === undefined) location.replace(address.hash); // only so does `:target` know of it
    else window.scrollTo({ top: height ?? 0, behavior: "instant" });
  };

  document.addEventListener("click", (event) => {
    const link = /** @type {Element} */ (event.target).closest?.("a[href]");
    if (event.defaultPrevented || !(link instanceof HTMLAnchorElement) || !leadsToPage(event, link, root)) return;
    if (link.pathname === location.pathname && link.hash) return;
    event.preventDefault();
    clearTimeout(waiting);
    keepHeight();
    go(new URL(link.href), undefined);
  });
  window.addEventListener("popstate", () => {
    clearTimeout(waiting);
    if (location.pathname !== shown) go(new URL(location.href), history.state?.height ?? 0);
  });
  window.addEventListener("scroll", () => {
    clearTimeout(waiting);
    waiting = setTimeout(keepHeight, STILL);
  }, { passive: true });
}

/** What stays must not be looked for beside the next page. A sheet that is told its address would be fetched again. */
function holdFast() {
  const staying = /** @type {NodeListOf<HTMLAnchorElement | HTMLLinkElement>} */ (document.querySelectorAll("head link:not([rel=stylesheet]), .md-header a"));
  for (const link of staying) if (link.getAttribute("href") !== link.href) link.href = String(link.href);
}

const keepHeight = () => history.replaceState({ height: window.scrollY }, "");

/** A plain tap on a link to a page of this site; papers and files are no pages. @param {MouseEvent} event @param {HTMLAnchorElement} link @param {URL} root */
function leadsToPage(event, link, root) {
  const isPlain = event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey && !event.altKey;
  const isOurs = link.origin === root.origin && link.pathname.startsWith(root.pathname) && link.pathname.endsWith("/");
  return isPlain && isOurs && !link.target && !link.hasAttribute("download");
}

/** Nothing where there is no such page, or no page of this site, as from a network that asks to sign in. @param {URL} address */
async function fetchPage(address) {
  const answer = await fetch(address.href.replace(/#.*/, "")).catch(() => undefined);
  if (!answer?.ok || answer.redirected) return undefined;
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  return PARTS.every((part) => page.querySelector(part)) ? page : undefined;
}
