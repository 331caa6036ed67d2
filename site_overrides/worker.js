// Keeps the whole site on the phone, one version at a time, and changes to the next only when it is asked to.
// The build writes here: version, files = {"path": "digest"}, pack = {path, digest, size, apart, loaded}: what packs well, in
// one file, the sizes of the others, and what every page has loaded already; titles: the file that search reads, made of the pages here.
/* the list of files */

importScripts("unpacking.js");

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const scope = worker.registration.scope;
const ours = `kept ${new URL(scope).pathname} `; // other sites of the same host keep caches too
const cacheName = ours + version;

/** The key under which a file is kept: where it is, and which bytes. @param {string} path */
const keyOf = (path) => `${new URL(path, scope)}?digest=${encodeURIComponent(files[path])}`;

/** A half-finished upload or a sign-in page of a hotel fails here instead of being kept. @param {string} path @param {{digest?: string, cache?: RequestCache, came?: (bytes: number) => void}} more  `came` is told of each piece */
async function fetchChecked(path, { digest = files[path], cache = "no-cache", came } = {}) {
  const answer = await fetch(new URL(path, scope), { cache, redirect: "error", credentials: "same-origin" });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  const pieces = /** @type {BlobPart[]} */ ([]);
  const reader = /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */ (answer.body).getReader();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    pieces.push(piece.value);
    came?.(piece.value.length);
  }
  const bytes = await new Blob(pieces).arrayBuffer();
  if (await digestOf(bytes) !== digest) throw new Error(`${path}: not as it was built`);
  return new Response(bytes, { headers: { "Content-Type": answer.headers.get("Content-Type") ?? "" } });
}

/** Whether a file is in this version's cache, if need be taken over from the version before. @param {Cache} cache @param {string} path */
async function isKept(cache, path) {
  const key = keyOf(path);
  if (await cache.match(key)) return true;
  const old = await caches.match(key);
  if (old) await cache.put(key, old);
  return Boolean(old);
}

/** @param {Cache} cache @param {string} path */
async function keep(cache, path) {
  if (!await isKept(cache, path)) await cache.put(keyOf(path), await fetchChecked(path));
}

/** What every page loads came a moment ago, and the browser still has it. What it has otherwise comes with the rest. @param {Cache} cache */
async function keepLoaded(cache) {
  const keepOne = async (/** @type {string} */ path) => cache.put(keyOf(path), await fetchChecked(path, { cache: "force-cache" }));
  await Promise.allSettled(pack.loaded.map(keepOne));
}

/** Fills the cache from the pack; what comes out of it otherwise than it should comes with the rest. @param {Cache} cache @param {(bytes: number) => void} came */
async function keepPacked(cache, came) {
  const answer = await fetchChecked(pack.path, { digest: pack.digest, came });
  const packed = filesIn(unpack(new Uint8Array(await answer.arrayBuffer())));
  await Promise.all(packed.map(async ({ path, type, bytes }) => {
    if (await digestOf(bytes) === files[path]) await cache.put(keyOf(path), new Response(bytes, { headers: { "Content-Type": type } }));
  }));
}

/** As in `generator/publishing/digest.py`. @param {BufferSource} bytes */
const digestOf = async (bytes) => btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest("SHA-256", bytes), 0, 12)));

/** @param {{kind: string, percent?: number, version?: string}} message */
async function tell(message) {
  for (const client of await worker.clients.matchAll({ includeUncontrolled: true })) client.postMessage(message);
}

/** What comes for a file; those in the pack share its size. What was loaded is here, and the titles are made here. @param {string} path */
function weight(path) {
  const packed = Object.keys(files).length - Object.keys(pack.apart).length - pack.loaded.length - 1;
  return path === titles || pack.loaded.includes(path) ? 0 : pack.apart[path] ?? pack.size / packed;
}

/** Tells of every hundredth of the copy that has come. */
function startTelling() {
  const all = Object.keys(files).reduce((sum, path) => sum + weight(path), 0);
  let [here, told] = [0, -1];
  const came = (/** @type {number} */ bytes) => {
    here += bytes;
    const percent = Math.min(100, Math.floor(100 * here / all + 1e-6)); // shares of the pack add up but for a last digit
    if (percent > told) tell({ kind: "keeping", percent: told = percent });
  };
  came(0);
  return { came, startAt: (/** @type {string[]} */ paths) => { here = paths.reduce((sum, path) => sum + weight(path), 0); } };
}

const TITLED = /<h1[^>]*>([^\n]*?)<\/h1>| id="([^"]+)"| data-find>([^\n]*?)<\/(?:h2|strong|summary|span)>/g;

/** As `titles_in` of `generator/publishing/searching.py`. @param {string} address @param {string} html */
function titlesIn(address, html) {
  const found = [];
  let to = address;
  for (const [, page, part, title] of html.matchAll(TITLED)) {
    if (part) to = `${address}#${part}`;
    else found.push([page === undefined ? to : to = address, title ?? page]);
  }
  return found;
}

/** What search reads is made of the pages that are here. @param {Cache} cache */
async function keepTitles(cache) {
  if (await isKept(cache, titles)) return;
  const pages = Object.keys(files).filter((path) => /(^|\/)$/.test(path));
  const texts = await Promise.all(pages.map(async (path) => (await cache.match(keyOf(path)))?.text() ?? ""));
  const bytes = new TextEncoder().encode(JSON.stringify(pages.flatMap((path, place) => titlesIn(path, texts[place]))));
  if (await digestOf(bytes) === files[titles]) await cache.put(keyOf(titles), new Response(bytes, { headers: { "Content-Type": "application/json" } }));
  else await keep(cache, titles);
}

/** Which files are to be fetched yet. @param {Cache} cache */
async function missing(cache) {
  const paths = Object.keys(files).filter((path) => path !== titles);
  const kept = await Promise.all(paths.map((path) => isKept(cache, path)));
  return paths.filter((_, place) => !kept[place]);
}

/** Whether no version kept pages before this one. A copy that broke off has left files, but keeps no pages. */
let isFirst = false;

async function install() {
  isFirst = !worker.registration.active;
  const cache = await caches.open(cacheName);
  const telling = startTelling();
  let waiting = await missing(cache);
  if (waiting.length > Object.keys(files).length / 2) {
    await Promise.allSettled([keepLoaded(cache), keepPacked(cache, telling.came)]); // what is missing comes one by one
    waiting = await missing(cache);
  }
  telling.startAt(Object.keys(files).filter((path) => !waiting.includes(path)));
  const work = async () => {
    for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
      if (path in pack.apart) await cache.put(keyOf(path), await fetchChecked(path, { came: telling.came }));
      else {
        await keep(cache, path);
        telling.came(weight(path));
      }
    }
  };
  await Promise.all(Array.from({ length: 6 }, work));
  await keepTitles(cache);
  tell({ kind: "kept", version });
}

async function activate() {
  const old = (await caches.keys()).filter((name) => name.startsWith(ours) && name !== cacheName);
  for (const name of old) await caches.delete(name);
  if (isFirst) await worker.clients.claim();
}

/** @param {Request} request */
async function missingPage(request) {
  const page = await answer("404.html", request);
  return new Response(page.body, { status: 404, headers: page.headers });
}

/** A file that is on the host only. Without a signal: its place on the nearest page above, which says what is kept instead. @param {Request} request @param {string} path */
async function aside(request, path) {
  try {
    return await fetch(request);
  } catch {
    const folders = path.split("/").slice(0, -1).map((_, depth, all) => `${all.slice(0, all.length - depth).join("/")}/`);
    const page = folders.find((folder) => folder in files);
    return page ? Response.redirect(new URL(`${page}#${path.slice(path.lastIndexOf("/") + 1).replace(/\.\w+$/, "")}`, scope)) : missingPage(request);
  }
}

/** @param {string} path @param {Request} request */
async function answer(path, request) {
  const cache = await caches.open(cacheName);
  const kept = await cache.match(keyOf(path));
  if (kept) return kept;
  try {
    const fresh = await fetchChecked(path); // the browser dropped it
    await cache.put(keyOf(path), fresh.clone());
    return fresh;
  } catch {
    return fetch(request);
  }
}

/** @param {FetchEvent} event */
function respond(event) {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(scope)) return;
  const path = url.pathname.slice(new URL(scope).pathname.length).replace(/(^|\/)index\.html$/, "$1");
  if (path in files) event.respondWith(answer(path, event.request));
  else if (`${path}/` in files) event.respondWith(Response.redirect(new URL(`${path}/${url.search}`, scope)));
  else if (event.request.mode === "navigate") event.respondWith(/\.\w+$/.test(path) ? aside(event.request, path) : missingPage(event.request));
  else if (event.request.destination === "image") event.respondWith(fetch(event.request).catch(() => new Response(null, { status: 204 })));
}

/** Whether a file is kept with the bytes it should have. What is not, goes. @param {Cache} cache @param {string} path */
async function isWhole(cache, path) {
  const kept = await cache.match(keyOf(path));
  const bytes = await kept?.arrayBuffer().catch(() => undefined);
  return (bytes && await digestOf(bytes)) === files[path] || (await cache.delete(keyOf(path)), false);
}

/** How much of the site is here, after a try to fetch what is not. */
async function state() {
  const cache = await caches.open(cacheName);
  const paths = [...Object.keys(files).filter((path) => path !== titles), titles]; // made of the pages, when they are whole
  const missing = [];
  const again = (/** @type {string} */ path) => (path === titles ? keepTitles(cache) : keep(cache, path)).then(() => true, () => false);
  for (const path of paths) if (!await isWhole(cache, path) && !await again(path)) missing.push(path);
  return { kind: "state", version, all: paths.length, missing: missing.length };
}

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(activate()));
worker.addEventListener("fetch", respond);
worker.addEventListener("message", (event) => {
  if (event.data === "take over") worker.skipWaiting();
  if (event.data === "state") event.waitUntil(state().then((found) => event.ports[0].postMessage(found)));
});
