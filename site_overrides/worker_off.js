// Put in the place of worker.js, this frees every phone of a version that should not have gone out:
// it removes itself and all that was kept, and loads the open pages anew. Ticks and plans stay where they are.

const AT_MOST = 5000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  const ours = `kept ${new URL(self.registration.scope).pathname} `;
  for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
  await self.registration.unregister();
  const pages = await self.clients.matchAll({ type: "window" });
  const loaded = Promise.all(pages.map((page) => page.navigate(page.url).catch(() => undefined)));
  await Promise.race([loaded, new Promise((done) => setTimeout(done, AT_MOST))]); // a browser ends a worker that has nothing left to do
})()));
