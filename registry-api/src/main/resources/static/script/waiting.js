// The list of what waits on this phone, and of the pages kept on it.
import { able, isAway, owner, sendAll, show, when } from './offline.js';
import { save, takeIn } from './filings-file.js';
import { keptPages } from './keep.js';

const { outbox } = self;
const section = document.getElementById('waiting');
const template = document.getElementById('waiting-one');
const words = template.dataset;
const told = section.querySelector('.told');

async function list(held) {
  const person = owner();
  const filings = person ? (await outbox.list(person)).filter((filing) => filing.state !== 'draft') : [];
  section.hidden = filings.length === 0;
  section.querySelector('ul').replaceChildren(...filings.map(item));
  section.querySelector('[data-do="send"]').hidden = !filings.some(isWaiting);
  told.textContent = filings.some(isWaiting) ? { 'sign-in': words.signIn, other: words.other, later: words.later }[held] ?? '' : '';
  if (!isAway()) {
    for (const filing of filings.filter((one) => one.state === 'filed')) {
      await outbox.drop(filing.person, filing.id);
    }
  }
}

const isWaiting = (filing) => filing.state === 'waits' || filing.state === 'photos';

function item(filing) {
  const element = template.content.cloneNode(true).firstElementChild;
  const act = (name) => element.querySelector(`[data-do="${name}"]`);
  element.querySelector('strong').textContent = filing.title;
  element.querySelector('.when').textContent = words.made.replace('#', when(filing.madeAt))
    + (filing.photos.length > 0 ? ', ' + words.with.replace('#', filing.photos.length) : '');
  element.querySelector('.state').textContent = words[camel(filing.state)];
  why(element.querySelector('.why'), filing);
  const open = act('open');
  if (filing.at) {
    open.href = filing.at;
    open.textContent = words.to;
  } else {
    open.href = `${filing.address}#waiting=${filing.id}`;
  }
  act('save').hidden = filing.state === 'filed';
  act('drop').hidden = filing.state === 'filed';
  act('save').addEventListener('click', () => save([filing]));
  act('drop').addEventListener('click', async () => {
    if (confirm(words.surely)) {
      await outbox.drop(filing.person, filing.id);
      await list();
      await show();
    }
  });
  return element;
}

const camel = (state) => state.replace(/-(.)/g, (all, letter) => letter.toUpperCase());

function why(place, filing) {
  const reasons = [filing.refusal?.detail, ...Object.values(filing.refusal?.errors ?? {}),
    ...(filing.refusal?.checks ?? []).map((check) => check.detail), ...filing.photos.map((photo) => photo.refused)];
  for (const reason of new Set(reasons.filter(Boolean))) {
    const line = document.createElement('li');
    line.textContent = reason;
    place.append(line);
  }
  place.hidden = place.children.length === 0;
}

async function listPages() {
  const kept = document.getElementById('kept');
  if (!kept || !owner()) {
    return;
  }
  const pages = [...await keptPages(owner())].sort(([a], [b]) => a.localeCompare(b));
  for (const [address, { at, title }] of pages) {
    const line = document.createElement('li');
    const link = document.createElement('a');
    link.href = address;
    link.textContent = title;
    line.append(link, ', ' + when(at));
    kept.querySelector('ul').append(line);
  }
  kept.hidden = pages.length === 0;
}

/** A file saved here or on another phone. */
async function takeFile(chooser) {
  const said = document.querySelector('#take-in .told');
  said.textContent = '';
  const taken = await takeIn(chooser.files[0], owner(), words.unfinished);
  chooser.value = '';
  if (taken === null) {
    said.textContent = said.dataset.wrong;
  } else {
    await list(await sendAll());
  }
}

if (able) {
  const chooser = document.querySelector('#take-in input');
  if (chooser && owner()) {
    document.getElementById('take-in').hidden = false;
    chooser.addEventListener('change', () => takeFile(chooser));
  }
  section.querySelector('[data-do="send"]').addEventListener('click', async () => list(await sendAll()));
  document.addEventListener('filings-sent', ({ detail }) => list(detail));
  list();
  listPages();
}
