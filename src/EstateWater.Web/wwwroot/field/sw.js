// Gives a page used outdoors from the phone when there is no signal. It never answers for the server's own addresses.
// Each page registers it for its own path, and each path has its own store.

const KEPT = `estate-water${new URL(self.registration.scope).pathname.replaceAll("/", "-")}-1`;
const PATIENCE_MS = 4000;

// Open pages that were given from the phone. Their parts come from there too: they fit one another, and nobody waits for each.
const fromPhone = new Set();

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  if (event.data?.keep) {
    event.waitUntil(keepOnly(event.data.keep));
  }
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method === "GET" && url.origin === location.origin && !url.pathname.includes("/api/")) {
    event.respondWith(request.mode === "navigate" ? page(request, event.resultingClientId) : part(request, event.clientId));
  }
});

async function keepOnly(addresses) {
  const cache = await caches.open(KEPT);
  const wanted = new Set(addresses.map((a) => new URL(a, location.href).href));
  for (const kept of await cache.keys()) {
    if (!wanted.has(kept.url)) {
      await cache.delete(kept);
    }
  }
  await Promise.all([...wanted].map(async (address) => keep(cache, address, await fetch(address))));
}

/** A redirect is not the page that was asked for (a sign-in, a hotspot), so it is never kept. */
async function keep(cache, request, response) {
  if (response.ok && !response.redirected) {
    await cache.put(request, response.clone());
  }
  return response;
}

async function page(request, client) {
  const cache = await caches.open(KEPT);
  const fresh = fetch(request).then((response) => keep(cache, request, response));
  try {
    return await Promise.race([fresh, new Promise((_, reject) => setTimeout(() => reject(new Error("no answer yet")), PATIENCE_MS))]);
  } catch (error) {
    const kept = await cache.match(request, { ignoreSearch: true });
    if (!kept) {
      return fresh;
    }
    fromPhone.add(client);
    return marked(kept);
  }
}

/** The kept page, marked with its age so that it can say so. */
async function marked(kept) {
  const at = new Date(kept.headers.get("Date") ?? Date.now()).toISOString();
  const html = (await kept.text()).replace("<html", `<html data-kept="${at}"`);
  return new Response(html, { headers: kept.headers });
}

async function part(request, client) {
  const cache = await caches.open(KEPT);
  const own = fromPhone.has(client) && (await cache.match(request));
  if (own) {
    return own;
  }
  try {
    return await keep(cache, request, await fetch(request));
  } catch (error) {
    const kept = await cache.match(request);
    if (kept) {
      return kept;
    }
    throw error;
  }
}
