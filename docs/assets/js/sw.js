// The service worker: keeps the whole site on the device, every file checked against the list that
// the build wrote. Files are kept under their own SHA-256 or under a name that holds a part of it, so
// an update fetches only what changed, an interrupted one goes on where it stopped, and the version in
// use stays whole until the next one is.

// Address within the site -> SHA-256.
const KEPT = new Map(Object.entries(__KEPT__)); // fetched when this version installs
const LATER = new Map(Object.entries(__LATER__)); // kept when first asked for
const SCOPE = self.registration.scope;
const STORE = `saltline ${SCOPE}`;
const AT_ONCE = 4; // so that the page's own requests find room beside them
const LOCK = "saltline: fetching"; // held by a page that waits for something large

// A browser keeps what it compiled of a script only beside the script's own address.
const NAMED = /\.[0-9a-f]{10}\.\w+$/;
const key = ([path, hash]) =>
  SCOPE + (NAMED.test(path) ? path : `?sha256=${encodeURIComponent(hash)}`);

async function hashOf(body) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return btoa(String.fromCharCode(...bytes));
}

/** Put a reply into the store if it holds what the list says. */
async function keep(store, reply, [path, hash]) {
  // A store takes no reply that says it varies with everything.
  const named = NAMED.test(path) && reply.headers.get("Vary") !== "*" && reply.clone();
  const body = await reply.arrayBuffer();
  if (!reply.ok || (await hashOf(body)) !== hash) return false;
  const headers = { "Content-Type": reply.headers.get("Content-Type") };
  await store.put(key([path, hash]), named || new Response(body, { headers }));
  return true;
}

/** What the page has fetched already is taken from the browser's own cache, if it is right. */
async function fetchInto(store, [path, hash]) {
  for (const cache of ["force-cache", "reload"]) {
    const reply = await fetch(new URL(path, SCOPE), { cache, priority: "low" });
    if (await keep(store, reply, [path, hash])) return;
  }
  throw new Error(`${path} is not what this version holds`);
}

/** Fetch when no page waits for something large. */
function inTurn(fetching) {
  const { locks } = self.navigator;
  return locks ? locks.request(LOCK, { mode: "shared" }, fetching) : fetching();
}

async function install() {
  const store = await caches.open(STORE);
  const there = new Set((await store.keys()).map(({ url }) => url));
  const missing = [...KEPT].filter((file) => !there.has(key(file)));
  const next = async () => {
    while (missing.length) {
      const file = missing.shift();
      await inTurn(() => fetchInto(store, file));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, next));
}

/** Drop what only older versions held, and serve the page that is open. */
async function activate() {
  const store = await caches.open(STORE);
  const wanted = new Set([...KEPT, ...LATER].map(key));
  const old = (await store.keys()).filter(({ url }) => !wanted.has(url));
  await Promise.all(old.map((request) => store.delete(request)));
  await self.clients.claim();
}

async function answer(event, file) {
  const store = await caches.open(STORE).catch(() => null);
  const found = await store?.match(key(file), { ignoreVary: true });
  if (found) return found;
  const reply = await fetch(event.request);
  if (store) event.waitUntil(keep(store, reply.clone(), file).catch(() => {}));
  return reply;
}

/** What a page says that is not kept, where the network does not answer either. */
function notHere() {
  const text = `<!doctype html><html lang="en"><meta charset="utf-8">
<meta name="viewport" content="width=device-width"><title>Not on this device</title>
<h1>Not on this device</h1><p>There is no network, and this page was never opened here.
<a href="${SCOPE}">All the care pages are kept: go there</a>, or try again later.</p>`;
  const headers = { "Content-Type": "text/html; charset=utf-8" };
  return new Response(text, { status: 503, headers });
}

/** The address as the list has it: within the site, a folder for its index page. */
function listed(url) {
  const path = decodeURI(new URL(url).pathname.slice(new URL(SCOPE).pathname.length));
  return path.replace(/(^|\/)index\.html$/, "$1");
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", ({ data }) => data === "use" && self.skipWaiting());
self.addEventListener("fetch", (event) => {
  const { method, url, mode, headers } = event.request;
  if (method !== "GET" || !url.startsWith(SCOPE) || headers.has("range")) return;
  const path = listed(url);
  const hash = KEPT.get(path) ?? LATER.get(path);
  const page = mode === "navigate";
  if (!hash && KEPT.has(`${path}/`)) {
    event.respondWith(Response.redirect(`${SCOPE}${path}/${new URL(url).search}`));
  } else if (hash || page) {
    const reply = hash ? answer(event, [path, hash]) : fetch(event.request);
    event.respondWith(page ? reply.catch(notHere) : reply);
  }
});
