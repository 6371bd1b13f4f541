// On every page: has it kept where that is possible, says that there is no network, and sends what waits.
import './outbox.js';

const { outbox } = self;
const body = document.body;
const words = document.getElementById('away');

/** Whether this browser can keep pages and filings; over plain http none does. */
export const able = self.isSecureContext && 'serviceWorker' in navigator && 'indexedDB' in self && 'caches' in self;

/** Whose phone this is: who signed in last, until they sign out. */
export function owner() {
  try {
    return body.dataset.person ?? localStorage.getItem('owner');
  } catch {
    return body.dataset.person ?? null;
  }
}

function setOwner(person) {
  try {
    if (person) {
      localStorage.setItem('owner', person);
    } else {
      localStorage.removeItem('owner');
    }
  } catch {
    // This browser keeps nothing.
  }
}

/** Whether this page came from the phone itself, or there is no network. */
export const isAway = () => 'kept' in body.dataset || !navigator.onLine;

/** Sends what waits and shows what is left. */
export async function sendAll() {
  const person = owner();
  if (!person || !navigator.onLine) {
    return show();
  }
  const held = await outbox.send(person).catch(() => 'later');
  document.dispatchEvent(new CustomEvent('filings-sent', { detail: held }));
  await show(held);
  return held;
}

/** What stands in the line above the page. */
export async function show(held) {
  const parts = [];
  if ('kept' in body.dataset) {
    parts.push(words.dataset.kept.replace('#', when(body.dataset.kept)));
  } else if (!navigator.onLine) {
    parts.push(words.dataset.off);
  }
  const person = owner();
  const here = await outbox.all().catch(() => []);
  const mine = here.filter((filing) => filing.person === person);
  const waiting = mine.filter((filing) => filing.state === 'waits' || filing.state === 'photos').length;
  const asked = mine.filter((filing) => filing.state === 'refused' || filing.state === 'photos-refused').length;
  const others = here.filter((filing) => filing.person !== person && filing.state !== 'draft').length;
  const line = words.querySelector('span');
  const link = words.querySelector('a.to');
  const signIn = words.querySelector('a.sign-in');
  if (waiting > 0) {
    parts.push(words.dataset.waits.replace('#', waiting));
  }
  if (asked > 0) {
    parts.push(words.dataset.asked.replace('#', asked));
  }
  if (others > 0) {
    parts.push(words.dataset.others.replace('#', others));
  }
  if (held === 'sign-in' && waiting > 0) {
    parts.push(words.dataset.signIn);
  }
  line.textContent = parts.join(' ');
  link.hidden = waiting + asked === 0;
  signIn.hidden = held !== 'sign-in' || waiting === 0;
  words.hidden = parts.length === 0;
}

export function when(at) {
  return new Date(at).toLocaleString(document.documentElement.lang, { dateStyle: 'medium', timeStyle: 'short' });
}

/** A kept form is a new one each time it is opened: a key of its own, today's day, the token of today's session. */
function freshen() {
  for (const form of document.querySelectorAll('form[data-fresh]')) {
    if (form.elements.key) {
      form.elements.key.value = crypto.randomUUID();
    }
    for (const name of ['measuredOn', 'observedOn', 'visitedOn']) {
      if (form.elements[name]) {
        form.elements[name].value = today();
      }
    }
  }
}

export function today() {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/** What a kept page sends of itself needs the token of the session of now. */
async function renewTokens() {
  const answer = await fetch('/api/v1/session', { cache: 'no-store' }).catch(() => null);
  const token = answer?.ok ? (await answer.json()).csrfToken : null;
  for (const field of token ? document.querySelectorAll('input[name="_csrf"]') : []) {
    field.value = token;
  }
}

/** That of the release of this page, at once. */
async function haveWorker() {
  try {
    const registration = await navigator.serviceWorker.register('/service-worker.js', { updateViaCache: 'none' });
    if (registration.active && !isAway() && !await caches.has('shell ' + body.dataset.release)) {
      await registration.update();
    }
  } catch {
    // Without a worker all works as long as there is a network; the next page tries again.
  }
}

async function begin() {
  if (body.dataset.person && !('kept' in body.dataset)) {
    setOwner(body.dataset.person);
  }
  await haveWorker();
  await sendAll();
  if (body.dataset.person && !isAway()) {
    const { keepPages } = await import('./keep.js');
    await keepPages(body.dataset.person, words.dataset.pages.trim().split(/\s+/));
  }
}

function signingOut(event) {
  if (event.target.matches('form[action$="/sign-out"]') && !event.target.dataset.cleared) {
    event.preventDefault();
    const form = event.target;
    import('./sign-out.js').then(({ leave }) => leave(form, body.dataset.person));
  }
}

if (able && 'kept' in body.dataset) {
  freshen();
}
for (const note of document.querySelectorAll('[data-offline-off]')) {
  note.hidden = able;
}
if (able) {
  document.addEventListener('submit', signingOut);
  self.addEventListener('online', () => {
    if ('kept' in body.dataset) {
      renewTokens();
    }
    sendAll();
  });
  self.addEventListener('offline', () => show());
  if (document.readyState === 'complete') {
    begin();
  } else {
    self.addEventListener('load', begin);
  }
}
