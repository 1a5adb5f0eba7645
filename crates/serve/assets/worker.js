// Keeps the pages of the book of days on the phone, so that they open without signal, and sends what waits when it is back.
'use strict';

importScripts('QUEUE_ADDRESS');

const KEPT = 'pages';
const ASSETS = ['STYLE_ADDRESS', 'QUEUE_ADDRESS', 'SCRIPT_ADDRESS'];
const ALWAYS = ['/no-signal', '/waiting'];
// With a kept copy in hand nobody waits longer than this for a poor line.
const PATIENCE_MS = 6000;
const FRESH_MS = 12 * 3600 * 1000;

const is_asset = url => ['/style.css', '/queue.js', '/script.js'].includes(url.pathname);
const is_kept = url =>
  url.pathname === '/' || ALWAYS.includes(url.pathname) || /^\/batch\/[^/]+(\/(write|day|week).*)?$/.test(url.pathname);

// The address that a page is kept under: without what is only said once.
const name_of = url => {
  const plain = new URL(url.href);
  plain.hash = '';
  // Untouched where there is nothing to take away: an address would be written another way.
  if (plain.searchParams.has('saved')) plain.searchParams.delete('saved');
  return plain.href;
};

// Where there is no room, a page is not kept: what was written comes first.
const put = async (url, answer) => {
  const kept = await caches.open(KEPT);
  await kept.put(name_of(url), answer).catch(() => {});
};

const kept_copy = async url => (await caches.open(KEPT)).match(name_of(url));

const no_signal = async () =>
  (await kept_copy(new URL('/no-signal', self.location))) || Response.error();

const fetched = async (request, url) => {
  const answer = await fetch(request);
  const is_page = (answer.headers.get('content-type') || '').startsWith('text/html');
  if (answer.ok && is_page && is_kept(url)) await put(url, answer.clone());
  return answer;
};

const page = async (request, url) => {
  const copy = is_kept(url) ? await kept_copy(url) : undefined;
  const patience = new Promise((_, ill) => copy && setTimeout(ill, PATIENCE_MS));
  try {
    return await Promise.race([fetched(request, url), patience]);
  } catch (_) {
    return copy || no_signal();
  }
};

const asset = async (request, url) => {
  const copy = await kept_copy(url);
  if (copy) return copy;
  const answer = await fetch(request);
  if (answer.ok) await put(url, answer.clone());
  return answer;
};

// Pages that somebody may want without signal, fetched one after the other while there is some.
const keep_pages = async addresses => {
  for (const address of addresses) {
    const url = new URL(address, self.location);
    const copy = await kept_copy(url);
    const age = copy ? Date.now() - Date.parse(copy.headers.get('date') || 0) : Infinity;
    if (is_kept(url) && (age > FRESH_MS || url.pathname.split('/').length < 4)) await fetched(url.href, url).catch(() => {});
  }
};

// A new program: its own pages, and every page that is kept made anew by it.
const made_anew = async () => {
  const kept = await caches.open(KEPT);
  const pages = (await kept.keys()).map(request => new URL(request.url)).filter(url => !is_asset(url));
  let lost = 0;
  for (const url of pages) await fetched(url.href, url).catch(() => lost++);
  if (lost) return;
  for (const request of await kept.keys()) {
    const url = new URL(request.url);
    if (is_asset(url) && !ASSETS.includes(url.pathname + url.search)) await kept.delete(request);
  }
};

self.addEventListener('install', event => {
  const first = caches.open(KEPT).then(kept => kept.addAll([...ASSETS, ...ALWAYS]));
  event.waitUntil(first.then(() => self.skipWaiting()));
});
self.addEventListener('activate', event => {
  event.waitUntil(self.clients.claim());
  made_anew();
});
self.addEventListener('message', event => event.waitUntil(keep_pages(event.data)));
self.addEventListener('sync', event => {
  const sent = queue.send().then(how => how === 'heard' || Promise.reject(new Error(how)));
  event.waitUntil(sent);
});
self.addEventListener('fetch', event => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    const answer = request.method === 'GET' ? page(request, url) : fetch(request).catch(no_signal);
    event.respondWith(answer);
  } else if (request.method === 'GET' && is_asset(url)) {
    event.respondWith(asset(request, url));
  }
});
