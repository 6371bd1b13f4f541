// Keeps a person's pages for where there is no network, those of one release together.

const HOURS = 3600 * 1000;
let leaving = false;

const cacheOf = (person, release) => caches.open(`pages ${release} ${person}`);

/**
 * Has the pages at hand kept anew, where they are older than some hours or of another release.
 * @param pages addresses that work for this person without a network
 */
export async function keepPages(person, pages) {
  const kept = await keptPages(person);
  const old = new Set();
  for (const address of new Set([...pages, ...kept.keys()])) {
    const page = kept.get(address);
    if (!page || Date.now() - page.at > 6 * HOURS || page.release !== releaseOfPage()) {
      old.add(address);
    }
  }
  for (const address of old) {
    await keepPage(person, address);
  }
  await dropReleases(person);
}

function releaseOfPage() {
  return document.body.dataset.release;
}

/** What is kept for a person: by address, when it was fetched, its title, and of which release it is. */
export async function keptPages(person) {
  const pages = new Map();
  for (const name of (await caches.keys()).filter((one) => one.startsWith('pages ') && one.endsWith(' ' + person))) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const answer = await cache.match(request);
      pages.set(new URL(request.url).pathname, { at: Date.parse(answer.headers.get('Kept-At')), release: name.split(' ')[1],
        title: decodeURIComponent(answer.headers.get('Kept-Title')) });
    }
  }
  return pages;
}

/**
 * Keeps one page and what it says is needed with it.
 * @return whether it is kept; a page that is no more, or no more for this person, is forgotten
 */
export async function keepPage(person, address, seen = new Set()) {
  seen.add(address);
  let answer;
  try {
    answer = await fetch(address, { headers: { Accept: 'text/html' }, cache: 'no-store', redirect: 'manual' });
  } catch {
    return false;
  }
  const release = answer.headers.get('Registry-Shell');
  if (leaving || !answer.ok || answer.headers.get('Registry-Person') !== person || !release) {
    if ([403, 404, 410].includes(answer.status)) {
      await forget(person, address);
    }
    return false;
  }
  const at = new Date().toISOString();
  const html = (await answer.text()).replace('<body ', `<body data-kept="${at}" `);
  const doc = new DOMParser().parseFromString(html, 'text/html');
  const headers = new Headers(answer.headers);
  headers.set('Kept-At', at);
  headers.set('Kept-Title', encodeURIComponent(doc.title.split(' \u00b7 ')[0]));
  headers.delete('Content-Length');
  headers.delete('Content-Encoding');
  if (leaving) {
    return false;
  }
  await forget(person, address);
  await (await cacheOf(person, release)).put(address, new Response(html, { headers }));
  for (const link of doc.querySelectorAll('main a[data-keep]')) {
    const next = new URL(link.getAttribute('href'), location.origin).pathname;
    if (!seen.has(next)) {
      await keepPage(person, next, seen);
    }
  }
  return true;
}

async function forget(person, address) {
  for (const name of (await caches.keys()).filter((one) => one.startsWith('pages ') && one.endsWith(' ' + person))) {
    await (await caches.open(name)).delete(address);
  }
}

/** Caches of earlier releases that hold nothing any more. */
async function dropReleases(person) {
  const names = await caches.keys();
  for (const name of names.filter((one) => one.startsWith('pages ') && one.endsWith(' ' + person))) {
    if ((await (await caches.open(name)).keys()).length === 0) {
      await caches.delete(name);
      await dropShell(name.split(' ')[1]);
    }
  }
}

async function dropShell(release) {
  const names = await caches.keys();
  const used = release === releaseOfPage() || names.some((one) => one.startsWith(`pages ${release} `));
  if (!used && names.includes('shell ' + releaseOfPage())) {
    await caches.delete('shell ' + release);
  }
}

/** Forgets all pages of a person, who is about to leave: none is kept after that. */
export async function forgetPages(person) {
  leaving = true;
  for (const name of (await caches.keys()).filter((one) => one.startsWith('pages ') && one.endsWith(' ' + person))) {
    await caches.delete(name);
  }
}
