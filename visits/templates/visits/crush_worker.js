/* Keeps the crush page on the phone, so that it opens without a network.
   Written by hand because this is all of it: one list, one version, one page. A library for it would be larger than the
   modules it looks after, and would bring ways to mix versions that we do not want.

   - Everything of one version is fetched before that version is used, or none of it is: in one packet, because on a
     weak line a hundred questions take far longer than one.
   - A page of a version gets its files from that version only. A newer one waits until no page of the older is open.
   - Only the crush page is answered from here. Other pages, papers.json and sending go to the network as ever. */

const VERSION = "{{ version }}";
const KEPT = `crush-${VERSION}`;
const SHELL = "{{ shell }}";
const PACK = "{{ pack }}";
const FILES = new Set({{ files|safe }});
const CRUSH = /^\/visits\/(\d+\/)?crush\/$/;

self.addEventListener("install", (event) => event.waitUntil(fetchAll()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin) return;
  if (request.mode === "navigate" && CRUSH.test(pathname)) event.respondWith(kept(SHELL, request));
  else if (FILES.has(pathname)) event.respondWith(fileFor(event));
});

/* The page says so at a safe moment; with another page of the old version open it goes on waiting. */
self.addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(takeOverIfAlone());
});

async function fetchAll() {
  const [shell, pack] = await Promise.all([SHELL, PACK].map((address) => fetch(address, { cache: "reload" })));
  // The shell answers with the sign-in page to a stranger: that must never be kept in its place.
  if (!shell.ok || shell.redirected || !pack.ok) throw new Error(`answered ${shell.status} and ${pack.status}`);
  const files = [...unpacked(new Uint8Array(await pack.arrayBuffer()))];
  const cache = await caches.open(KEPT);
  await Promise.all([[SHELL, shell], ...files].map(([address, answer]) => cache.put(address, answer)));
}

/* A line that names the files, and then the files. */
function* unpacked(bytes) {
  const end = bytes.indexOf(10);
  const { version, files } = JSON.parse(new TextDecoder().decode(bytes.subarray(0, end)));
  // The site went over to another version while we asked: its own worker will come.
  if (version !== VERSION) throw new Error(`packet of version ${version}`);
  let from = end + 1;
  for (const [address, kind, size] of files) {
    yield [address, new Response(bytes.slice(from, from + size), { headers: { "Content-Type": kind } })];
    from += size;
  }
}

async function takeOver() {
  const old = (await caches.keys()).filter((name) => name.startsWith("crush-") && name !== KEPT);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function takeOverIfAlone() {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  const ours = pages.filter((page) => CRUSH.test(new URL(page.url).pathname));
  if (ours.length <= 1) await self.skipWaiting();
}

async function fileFor(event) {
  const page = await self.clients.get(event.clientId);
  const isCrush = page && CRUSH.test(new URL(page.url).pathname);
  return isCrush ? kept(event.request.url, event.request) : fetch(event.request);
}

async function kept(address, request) {
  const cache = await caches.open(KEPT);
  return (await cache.match(address, { ignoreVary: true })) ?? fetch(request);
}
