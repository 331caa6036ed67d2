// Put in the place of worker.js, this frees every phone of a version that should not have gone out: all that was kept goes,
// and open pages remove the worker and load anew. Ticks and plans stay where they are.

const ours = `kept ${new URL(self.registration.scope).pathname} `;

async function clear() {
  for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
}

/** Pages are told at once: now and then a browser leaves a new worker waiting for good behind the one that is to go. */
async function install() {
  self.skipWaiting();
  await clear();
  for (const page of await self.clients.matchAll({ type: "window", includeUncontrolled: true })) page.postMessage({ kind: "freed" });
}

/** Where no page was open to hear of it. */
async function activate() {
  await clear();
  await self.registration.unregister();
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
