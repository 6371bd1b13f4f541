'use strict';
// Filings that wait on this phone: kept in IndexedDB by person, and sent once. Taken by pages and by the service worker,
// so it is no module.
(() => {
  const STORE = 'filings';
  const PATIENCE = 60_000;

  function open() {
    return new Promise((done, fail) => {
      const asked = indexedDB.open(STORE, 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore(STORE, { keyPath: ['person', 'id'] });
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
      asked.onblocked = () => fail(new Error('blocked'));
    });
  }

  async function ask(mode, question) {
    const base = await open();
    try {
      return await new Promise((done, fail) => {
        const transaction = base.transaction(STORE, mode);
        const asked = question(transaction.objectStore(STORE));
        transaction.oncomplete = () => done(asked.result);
        transaction.onabort = () => fail(transaction.error ?? asked.error ?? new Error('not kept'));
      });
    } finally {
      base.close();
    }
  }

  const ofPerson = (person) => IDBKeyRange.bound([person, ''], [person, '\uffff']);

  /** What a person has here, the oldest first. */
  async function list(person) {
    return (await ask('readonly', (store) => store.getAll(ofPerson(person)))).sort((a, b) => a.madeAt - b.madeAt);
  }

  const all = () => ask('readonly', (store) => store.getAll());
  const find = (person, id) => ask('readonly', (store) => store.get([person, id]));
  const keep = (filing) => ask('readwrite', (store) => store.put(filing));
  const drop = (person, id) => ask('readwrite', (store) => store.delete([person, id]));
  const clear = (person) => ask('readwrite', (store) => store.delete(ofPerson(person)));

  /**
   * Sends what waits, one after another; where another page is at it, after it.
   * @return what holds the rest back: nothing, later, sign-in or other (somebody else is signed in)
   */
  function send(person) {
    return navigator.locks ? navigator.locks.request('filings', () => sendAll(person)) : sendAll(person);
  }

  async function sendAll(person) {
    const waiting = (await list(person)).filter((filing) => filing.state === 'waits' || filing.state === 'photos');
    if (waiting.length === 0) {
      return 'nothing';
    }
    const session = await whoAsks();
    if (!session.person || session.person !== person) {
      return session.person ? 'other' : session.held;
    }
    for (const filing of waiting) {
      const held = await sendOne(filing, session);
      if (held) {
        return held;
      }
    }
    return 'nothing';
  }

  async function whoAsks() {
    try {
      const answer = await fetch('/api/v1/session', { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE) });
      return answer.ok && isJson(answer) ? await answer.json() : { held: answer.status === 401 ? 'sign-in' : 'later' };
    } catch {
      return { held: 'later' };
    }
  }

  const isJson = (answer) => /json/.test(answer.headers.get('Content-Type') ?? '');

  async function sendOne(filing, session) {
    if (filing.state === 'waits') {
      const held = await sendForm(filing, session);
      if (held) {
        return held;
      }
    }
    return filing.state === 'photos' ? sendPhotos(filing, session) : null;
  }

  async function sendForm(filing, session) {
    const body = new URLSearchParams(filing.entries);
    body.set('_csrf', session.csrfToken);
    const came = await post(filing.address, body, { Accept: 'application/json', 'X-CSRF-TOKEN': session.csrfToken });
    if (came.held) {
      return came.held;
    }
    if (came.refused) {
      await keep(Object.assign(filing, { state: 'refused', refusal: came.refused }));
      return null;
    }
    if (!came.done.at) {
      return 'later';
    }
    delete filing.refusal;
    await keep(Object.assign(filing, { at: came.done.at, state: filing.photos.length > 0 ? 'photos' : 'filed' }));
    return null;
  }

  async function sendPhotos(filing, session) {
    const measurement = await measurementOf(filing);
    if (measurement.held) {
      return measurement.held;
    }
    for (const photo of filing.photos.filter((one) => one.blob && !one.refused)) {
      const parts = new FormData();
      parts.append('file', photo.blob, 'photo.jpg');
      for (const name of ['shows', 'text', 'takenOn', 'credit']) {
        parts.append(name, photo[name] ?? '');
      }
      const came = await post(`/api/v1/measurements/${measurement.id}/photos`, parts,
        { 'X-CSRF-TOKEN': session.csrfToken, 'Idempotency-Key': photo.key });
      if (came.held) {
        return came.held;
      }
      if (came.refused) {
        photo.refused = [came.refused.detail, ...Object.values(came.refused.errors)].filter(Boolean).join(' ');
      } else {
        delete photo.blob;
      }
      await keep(filing);
    }
    await keep(Object.assign(filing, { state: filing.photos.some((photo) => photo.refused) ? 'photos-refused' : 'filed' }));
    return null;
  }

  /** The photos go with the measurement that the filing brought, or that it signs off on. */
  async function measurementOf(filing) {
    const signed = filing.address.match(/^\/measurements\/([^/?]+)\/sign-off$/);
    if (signed) {
      return { id: signed[1] };
    }
    const [, kind, id] = filing.at.match(/^\/(nominations|measurements)\/([^/?]+)/) ?? [];
    if (kind !== 'nominations') {
      return { id };
    }
    try {
      const answer = await fetch(`/api/v1/nominations/${id}`, { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE) });
      return answer.ok ? { id: (await answer.json()).measurement.id } : { held: answer.status === 401 ? 'sign-in' : 'later' };
    } catch {
      return { held: 'later' };
    }
  }

  /** What came of it: done, refused for what it says, or held back by what has nothing to do with it. */
  async function post(address, body, headers) {
    let answer;
    let json;
    try {
      answer = await fetch(address, { method: 'POST', body, headers, signal: AbortSignal.timeout(PATIENCE) });
      if (answer.status === 401) {
        return { held: 'sign-in' };
      }
      if (!isJson(answer)) {
        return { held: 'later' };
      }
      json = await answer.json();
    } catch {
      return { held: 'later' };
    }
    if (answer.ok) {
      return { done: json };
    }
    const other = json.type === '/problems/cross-site' || answer.headers.has('Retry-After');
    if (answer.status >= 500 || other) {
      return { held: 'later' };
    }
    const errors = Array.isArray(json.errors)
      ? Object.fromEntries(json.errors.map((error) => [error.pointer, error.detail])) : json.errors ?? {};
    return { refused: { status: answer.status, title: json.title, detail: json.detail, errors, checks: json.checks ?? [],
      confirmedFor: json.confirmedFor ?? '' } };
  }

  self.outbox = { list, all, find, keep, drop, clear, send };
})();
