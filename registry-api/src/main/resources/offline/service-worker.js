// Keeps the pages that work without a network. Each release is another worker: its scripts and style have the release in
// their address, so that a page never meets those of another.
const RELEASE = 'VERSION';
const FILES = ['FILES'];
const PAGES = ['/offline', '/measure', '/cautions'];
const SHELL = 'shell ' + RELEASE;
const OF_A_RELEASE = /^\/v([0-9a-f]{12})\//;
// Pages of which a question in the address makes another beginning, not another page.
const ONE_PAGE = ['/measure', '/nominate', '/remeasure', '/report', '/offline'];
const PATIENCE = 10_000;
const LONGEST_KEPT = 7 * 24 * 3600 * 1000;

importScripts(FILES.find((file) => file.endsWith('/outbox.js')));

self.addEventListener('install', (event) => event.waitUntil(fill()));

/** All of one release, or nothing. */
async function fill() {
  const cache = await caches.open(SHELL);
  await Promise.all(FILES.map(async (file) => cache.put(file, await take(file, {}))));
  for (const page of PAGES) {
    const answer = await take(page, { credentials: 'omit', cache: 'no-store' });
    if (answer.headers.get('Registry-Shell') !== RELEASE) {
      throw new Error('another release answers');
    }
    await cache.put(page, answer);
  }
  await self.skipWaiting();
}

/** A weak network is asked again. */
async function take(address, options, tries = 3) {
  try {
    const answer = await fetch(address, options);
    if (answer.ok) {
      return answer;
    }
  } catch (fault) {
    if (tries === 1) {
      throw fault;
    }
  }
  if (tries === 1) {
    throw new Error(address + ' is not there');
  }
  await new Promise((done) => setTimeout(done, 1000));
  return take(address, options, tries - 1);
}

self.addEventListener('activate', (event) => event.waitUntil(settle()));

/** Earlier releases go, but for those of which a person's pages are still kept: these are read with their own scripts. */
async function settle() {
  const names = await caches.keys();
  for (const name of names.filter((one) => one.startsWith('shell ') && one !== SHELL)) {
    const release = name.slice('shell '.length);
    if (!names.some((one) => one.startsWith(`pages ${release} `))) {
      await caches.delete(name);
    }
  }
  await self.clients.claim();
}

self.addEventListener('fetch', (event) => {
  const address = new URL(event.request.url);
  if (event.request.method !== 'GET' || address.origin !== self.location.origin) {
    return;
  }
  if (OF_A_RELEASE.test(address.pathname)) {
    event.respondWith(file(event.request));
  } else if (event.request.mode === 'navigate') {
    event.respondWith(page(event.request, address));
  }
});

async function file(request) {
  return (await caches.match(request.url, { ignoreVary: true })) ?? fetch(request);
}

/** From the network; where there is none, or none that answers, as it was kept. */
async function page(request, address) {
  const kept = await find(address);
  try {
    const answer = await (kept ? Promise.race([fetch(request), late()]) : fetch(request));
    await forgetOthers(answer.headers.get('Registry-Person'));
    return kept && answer.status >= 502 && answer.status <= 504 ? kept : answer;
  } catch {
    return kept ?? await find(new URL('/offline', address)) ?? Response.error();
  }
}

function late() {
  return new Promise((done, fail) => setTimeout(() => fail(new Error('late')), PATIENCE));
}

async function find(address) {
  if (address.search && !ONE_PAGE.includes(address.pathname)) {
    return null;
  }
  const names = await caches.keys();
  const order = [...names.filter((name) => name.startsWith(`pages ${RELEASE} `)),
    ...names.filter((name) => name.startsWith('pages ') && !name.startsWith(`pages ${RELEASE} `)), SHELL];
  for (const name of order) {
    const answer = await (await caches.open(name)).match(address.pathname, { ignoreVary: true });
    if (answer && (name === SHELL || Date.now() - Date.parse(answer.headers.get('Kept-At')) < LONGEST_KEPT)) {
      return answer;
    }
  }
  return null;
}

/** Whoever is signed in now never sees what was kept for somebody else. */
async function forgetOthers(person) {
  if (person && person !== 'nobody') {
    for (const name of await caches.keys()) {
      if (name.startsWith('pages ') && !name.endsWith(' ' + person)) {
        await caches.delete(name);
      }
    }
  }
}

self.addEventListener('sync', (event) => {
  if (event.tag.startsWith('filings ')) {
    event.waitUntil(self.outbox.send(event.tag.slice('filings '.length)).then((outcome) => {
      if (outcome === 'later') {
        throw new Error('later');
      }
    }));
  }
});
