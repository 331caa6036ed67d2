// Put in the place of worker.js, this frees every phone of a version that should not have gone out:
// it removes itself and all that was kept, and loads the open pages anew. Ticks and plans stay where they are.

const AT_MOST = 5000;

/** Removes all that was kept. */
async function clear() {
  const ours = `kept ${new URL(self.registration.scope).pathname} `;
  for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
}

/** Does not wait for its turn: now and then a browser leaves it waiting behind the worker that is to go. */
async function install() {
  self.skipWaiting();
  await clear();
  for (const page of await self.clients.matchAll({ type: "window", includeUncontrolled: true })) page.postMessage({ kind: "freed" });
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  await clear();
  await self.registration.unregister();
  const pages = await self.clients.matchAll({ type: "window" });
  const loaded = Promise.all(pages.map((page) => page.navigate(page.url).catch(() => undefined)));
  await Promise.race([loaded, new Promise((done) => setTimeout(done, AT_MOST))]); // a browser ends a worker that has nothing left to do
})()));
