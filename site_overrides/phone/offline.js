// The copy kept on the phone: made once, and replaced only when nobody is in the middle of something.

import { quiet } from "./breathing.js";
import { isInBrowserOfIphone } from "./home_screen.js";
import { say } from "./words_said.js";

let asked = false;
let stale = false;
let cannot = false;
let broke = false;

/** The site was sealed; an author's preview is not, and keeps nothing. */
const isSealed = () => Boolean(document.querySelector('meta[http-equiv="Content-Security-Policy"]'));

/** @param {URL} root @param {import("./bar.js").Strip} strip @param {import("./timers.js").Timers} timers */
export async function startOffline(root, strip, timers) {
  const workers = navigator.serviceWorker;
  if (!isSealed()) return;
  nameManifest(root);
  if (!workers) return cannotKeep(strip);
  /** @type {ServiceWorkerRegistration | null} */ let registration = null;
  let hadOne = Boolean(workers.controller);
  workers.addEventListener("controllerchange", () => {
    if (asked) location.reload();
    // A first copy is of this page's version when this page asked for it; another window's may be of a later one.
    else stale ||= hadOne || registration?.active !== workers.controller;
    hadOne = true;
  });
  workers.addEventListener("message", ({ data }) => data.kind === "freed" ? leaveWorker() : showKeeping(strip, data));
  loadWhenStale();
  if (!hadOne) await quiet(); // the first copy takes a processor for a second or more
  const look = () => registration && offer(registration, strip, timers);
  const ask = async () => {
    window.removeEventListener("online", ask);
    broke = false;
    strip.show("keeping", []);
    registration = await askForCopy(root, strip, look, ask);
    look();
  };
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && registration?.update().catch(() => undefined));
  setInterval(look, 2000);
  await ask();
}

/** For those who install from another page than the front: none of them is to be painted later for it. @param {URL} root */
function nameManifest(root) {
  if (document.querySelector("link[rel=manifest]")) return;
  document.head.append(Object.assign(document.createElement("link"), { rel: "manifest", href: new URL("manifest.webmanifest", root).href }));
}

/**
 * Where a first copy breaks off it says so, and `again` is tried with the next signal or a tap.
 * @param {URL} root @param {import("./bar.js").Strip} strip @param {() => void} look @param {() => void} again
 */
async function askForCopy(root, strip, look, again) {
  const brokeOff = () => {
    if (navigator.serviceWorker.controller) return; // an older copy is whole
    broke = true;
    strip.show("keeping", [{ text: say("keeping_broke"), button: say("keeping_again"), act: again }]);
    window.addEventListener("online", again);
  };
  const mine = await navigator.serviceWorker.register(new URL("worker.js", root), { updateViaCache: "none" }).catch((fault) => fault);
  if (!(mine instanceof ServiceWorkerRegistration)) {
    if (mine instanceof TypeError) brokeOff(); // the worker itself did not come
    else cannotKeep(strip);
    return null;
  }
  mine.addEventListener("updatefound", () => {
    const coming = mine.installing;
    coming?.addEventListener("statechange", () => {
      look();
      if (coming.state === "redundant" && !mine.active) brokeOff();
    });
  });
  return mine;
}

/** Over plain http, in some private windows, or where it is forbidden. Told on every visit, until it is seen. @param {import("./bar.js").Strip} strip */
function cannotKeep(strip) {
  cannot = true;
  strip.show("signal", [{ text: say("signal_needed"), button: say("signal_seen"), act: () => strip.show("signal", []) }]);
}

/** The version that kept this page was called back. A page that no worker keeps has nothing to leave. */
async function leaveWorker() {
  if (!navigator.serviceWorker.controller) return;
  await (await navigator.serviceWorker.getRegistration())?.unregister();
  location.reload();
}

/** @param {ServiceWorkerRegistration} registration @param {import("./bar.js").Strip} strip @param {import("./timers.js").Timers} timers */
function offer(registration, strip, timers) {
  const waiting = registration.waiting && navigator.serviceWorker.controller;
  const act = () => {
    asked = true;
    registration.waiting?.postMessage("take over");
  };
  strip.show("update", waiting && isSafe(timers) ? [{ text: say("update_ready"), button: say("update_take"), act }] : []);
}

/** Whether nothing is lost or confused by loading a page anew. @param {import("./timers.js").Timers} timers */
export function isSafe(timers) {
  const boxes = /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll("[data-list] li:not([hidden]) input")]);
  const done = boxes.filter((box) => box.checked).length;
  return timers.running() === 0 && (done === 0 || done === boxes.length);
}

/** @param {import("./bar.js").Strip} strip @param {{kind: string, percent?: number}} message */
function showKeeping(strip, message) {
  if (message.kind === "keeping" && (broke || navigator.serviceWorker.controller)) return; // what was under way when it broke off still tells
  if (message.kind === "keeping") strip.show("keeping", [{ text: say("keeping", { percent: message.percent ?? 0 }) }]);
  if (message.kind === "kept") {
    strip.show("keeping", [{ text: say("kept") }]);
    setTimeout(() => strip.show("keeping", []), 6000);
  }
}

/** Another window took the new version: from here the next link loads its page whole instead of mixing two versions. */
function loadWhenStale() {
  document.addEventListener("click", (event) => {
    const link = /** @type {Element} */ (event.target).closest?.("a[href]");
    if (!stale || !(link instanceof HTMLAnchorElement) || link.origin !== location.origin) return;
    event.preventDefault();
    event.stopPropagation();
    location.assign(link.href);
  }, true);
}

/** In a browser's window an iPhone forgets what it kept. */
function hintAtInstalling() {
  const hint = /** @type {HTMLElement | null} */ (document.querySelector("[data-install-hint]"));
  if (hint) hint.hidden = !isInBrowserOfIphone;
}

/** Says on the page about this copy whether it is whole. @param {import("./store.js").Store} store */
export async function mountOfflineState(store) {
  hintAtInstalling();
  const words = document.querySelector("[data-offline-state]");
  const kept = document.querySelector("[data-kept-state]");
  if (!words || !kept) return;
  const persisted = await navigator.storage?.persisted?.().catch(() => false);
  kept.textContent = say(store.unsaved() || !store.isRead() ? "not_saved" : persisted ? "kept_for_good" : "kept_while_room");
  const worker = navigator.serviceWorker?.controller;
  if (!worker) return void (words.textContent = say(location.protocol === "file:" ? "offline_disk" : cannot ? "signal_needed" : "offline_no"));
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => {
    words.textContent = data.missing ? say("offline_part", { missing: data.missing, all: data.all }) : say("offline_yes", { all: data.all });
  };
  worker.postMessage("state", [port2]);
}
