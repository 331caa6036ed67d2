// Put in the place of worker.js, this frees every phone of a version that should not have gone out:
// it removes itself and all that was kept, and loads the open pages anew. Ticks and plans stay where they are.

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  const ours = `kept ${new URL(self.registration.scope).pathname} `;
  for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
  await self.registration.unregister();
  for (const client of await self.clients.matchAll({ type: "window" })) client.navigate(client.url);
})()));
