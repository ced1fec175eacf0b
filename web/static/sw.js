// The offline copy: the app's own files, nothing else. Never touches the records (IndexedDB).
// A new version is fetched quietly and waits until the page asks for it with {take: true}.

const VERSION = "{{version}}";
const FILES = {{files}};

// Several copies of the app may live on one origin under different paths; each cleans only its own.
const PREFIX = `weftbook ${new URL(self.registration.scope).pathname} `;
const CACHE = PREFIX + VERSION;
const HOME = new URL("./", self.registration.scope);
const INDEX = new URL("index.html", HOME);

self.addEventListener("install", (event) => {
  const addresses = new Set([INDEX.href, ...FILES.map((file) => new URL(file, HOME).href)]);
  // "./" is the index by another name.
  addresses.delete(HOME.href);
  event.waitUntil((async () => {
    const cache = await caches.open(CACHE);
    await cache.addAll([...addresses].map((address) => new Request(address, { cache: "reload" })));
  })());
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
    // So that the very first page counts as a user of this version: without one, the browser would
    // activate the next version by itself instead of letting it wait.
    await self.clients.claim();
  })());
});

self.addEventListener("message", (event) => {
  if (event.data?.take === true) self.skipWaiting();
});

/** Some hosts answer index.html with a redirect to "./"; a browser refuses such a response for a navigation. */
function unredirected(response) {
  if (!response.redirected) return response;
  return new Response(response.body, { status: response.status, statusText: response.statusText, headers: response.headers });
}

async function index() {
  const cached = await (await caches.open(CACHE)).match(INDEX.href);
  return cached ? unredirected(cached) : fetch(INDEX.href);
}

async function respond(request) {
  const address = new URL(request.url);
  const navigation = request.mode === "navigate";
  if (navigation && (address.pathname === HOME.pathname || address.pathname === INDEX.pathname)) return index();
  const cached = await (await caches.open(CACHE)).match(request, { ignoreSearch: navigation });
  if (cached) return cached;
  try {
    return await fetch(request);
  } catch (cause) {
    if (navigation) return index();
    throw cause;
  }
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(HOME.href)) return;
  event.respondWith(respond(request));
});
