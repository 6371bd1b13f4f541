// Signing out clears this phone of what is the person's: what waits is sent first, or saved as a file.
import { all as drafts, drop as dropDraft } from './drafts.js';
import { save } from './filings-file.js';
import { forgetPages } from './keep.js';
import { sendAll } from './offline.js';

const { outbox } = self;

/** Sends or asks, clears, and signs out by the form. */
export async function leave(form, person) {
  await sendAll();
  const left = (await outbox.list(person)).filter((filing) => filing.state !== 'filed' && (filing.state !== 'draft'
    || filing.photos.length > 0));
  const unfinished = drafts(person);
  if (left.length + unfinished.length === 0) {
    await clear(form, person);
  } else {
    ask(form, person, left, unfinished);
  }
}

function ask(form, person, left, unfinished) {
  document.querySelector('[role="alertdialog"]')?.remove();
  const template = document.getElementById('leaving');
  const box = template.content.cloneNode(true).firstElementChild;
  const act = (name) => box.querySelector(`[data-do="${name}"]`);
  const sent = left.filter((filing) => filing.state !== 'draft').length;
  box.querySelector('.left').textContent = [sent && template.dataset.left.replace('#', sent),
    unfinished.length && template.dataset.drafts.replace('#', unfinished.length)].filter(Boolean).join(' ');
  act('save').addEventListener('click', async () => {
    await save([...left.filter((filing) => filing.state !== 'draft'), ...unfinished.map((draft) => ofDraft(draft, person, left))]);
    act('leave').disabled = false;
  });
  act('leave').addEventListener('click', () => clear(form, person));
  act('stay').addEventListener('click', () => box.remove());
  form.after(box);
  box.focus();
}

function ofDraft(draft, person, left) {
  const id = draft.entries.find(([name]) => name === 'key')?.[1] ?? crypto.randomUUID();
  return { id, person, name: document.body.dataset.name ?? '', title: draft.title, address: draft.address, madeAt: draft.at, state: 'draft', entries: draft.entries,
    photos: left.find((filing) => filing.id === id)?.photos ?? [] };
}

async function clear(form, person) {
  await forgetPages(person);
  await outbox.clear(person);
  drafts(person).forEach((draft) => dropDraft(draft.address, person));
  try {
    localStorage.removeItem('owner');
  } catch {
    // This browser keeps nothing.
  }
  if ((await outbox.all()).length === 0) {
    const nothing = document.createElement('input');
    nothing.type = 'hidden';
    nothing.name = 'clear';
    nothing.value = 'yes';
    form.append(nothing);
  }
  form.dataset.cleared = '';
  form.submit();
}
