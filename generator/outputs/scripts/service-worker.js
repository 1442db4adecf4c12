/**
 * Keeps this copy of the site on the device. With a network the newest page is always asked for first, so a new
 * posting wins; without one the kept copy answers. A new copy comes as a whole or not at all.
 */
"use strict";
const KEPT = "newel";
const AT_ONCE = 6;
const root = new URL("./", self.location.href).href;
const files = new Map(Object.entries(self.newelFiles));
const keyOf = (path) => root + encodeURI(path) + "?newel=" + files.get(path);

self.addEventListener("install", (event) => event.waitUntil(keepAll().then(() => self.skipWaiting())));
self.addEventListener("activate", (event) => event.waitUntil(dropOld().then(() => self.clients.claim())));
self.addEventListener("fetch", (event) => {
  const path = pathOf(event.request);
  if (path !== null) event.respondWith(answer(event.request, path));
});

/** @returns {string|null} the file of this site that is asked for; null for what is not kept */
function pathOf(request) {
  const address = new URL(request.url);
  if (request.method !== "GET" || !address.href.startsWith(root)) return null;
  const path = decodeURI(address.origin + address.pathname).slice(decodeURI(root).length);
  const page = path === "" || path.endsWith("/") ? path + "index.html" : path;
  return files.has(page) ? page : null;
}

async function answer(request, path) {
  try {
    // Asked anew even where a browser would guess that its own copy is young enough.
    const fresh = await fetch(request, { cache: "no-cache" });
    if (fresh.ok) return fresh;
  } catch {
    /* no network: the kept copy answers */
  }
  const cache = await caches.open(KEPT);
  return (await cache.match(keyOf(path))) || fetch(request);
}

/** Takes what is not kept yet; one file that cannot be had leaves the earlier copy as it was. */
async function keepAll() {
  const cache = await caches.open(KEPT);
  const left = [...files.keys()];
  const take = async () => {
    for (let path = left.pop(); path !== undefined; path = left.pop()) {
      const key = keyOf(path);
      if (await cache.match(key)) continue;
      const found = await fetch(root + encodeURI(path), { cache: "no-cache" });
      if (!found.ok) throw new Error(path + ": " + found.status);
      await cache.put(key, found);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, take));
}

async function dropOld() {
  const cache = await caches.open(KEPT);
  const wanted = new Set([...files.keys()].map(keyOf));
  for (const request of await cache.keys()) if (!wanted.has(request.url)) await cache.delete(request);
}
