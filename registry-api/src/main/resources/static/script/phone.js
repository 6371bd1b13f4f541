// A form that is kept on the phone before it is sent, so that nothing is lost where the network is.
import { drop as dropDraft } from './drafts.js';
import { able, isAway, owner, show } from './offline.js';

const { outbox } = self;

/**
 * Has a form go by way of the phone.
 * @param isLast whether the button pressed sends it
 * @param photos what goes with it: all()
 * @param ready whether nothing that it needs is lacking; says so otherwise
 */
export function byPhone(form, isLast, photos = { all: () => [] }, ready = () => true) {
  if (!able || !owner()) {
    return;
  }
  self.addEventListener('pageshow', (event) => event.persisted && enable(form, true));
  form.addEventListener('submit', (event) => {
    if (event.defaultPrevented || 'native' in form.dataset || !isLast(event.submitter)) {
      return;
    }
    event.preventDefault();
    if (!isAway() || ready()) {
      take(form, event.submitter, photos);
    }
  });
}

async function take(form, button, photos) {
  const words = document.getElementById('refused').dataset;
  const filing = record(form, button, photos.all());
  enable(form, false);
  if (!await keep(filing, words, form)) {
    native(form, button);
    return;
  }
  dropDraft(filing.address, filing.person);
  if (isAway()) {
    await arrange(filing.person);
    location.assign('/offline#waiting');
    return;
  }
  tell(form, words.sending);
  await outbox.send(filing.person).catch(() => 'later');
  await lead(form, button, await outbox.find(filing.person, filing.id));
}

function enable(form, whether) {
  for (const each of form.querySelectorAll('.actions button')) {
    each.disabled = !whether;
  }
}

/** Where it leads, by what came of it. */
async function lead(form, button, filing) {
  if (!filing || filing.state === 'filed') {
    const at = filing?.at ?? '/mine';
    if (filing) {
      await outbox.drop(filing.person, filing.id);
    }
    location.assign(at);
  } else if (filing.state === 'refused') {
    native(form, button);
  } else {
    await arrange(filing.person);
    location.assign('/offline#waiting');
  }
}

function record(form, button, photos) {
  if (form.elements.completedAt && !form.elements.completedAt.value) {
    form.elements.completedAt.value = new Date().toISOString();
  }
  const entries = [...new FormData(form)].filter(([name, value]) => name !== '_csrf' && typeof value === 'string');
  if (button?.name) {
    entries.push([button.name, button.value]);
  }
  return { person: owner(), name: document.body.dataset.name ?? '', id: form.elements.key.value, address: new URL(form.action).pathname, title: title(form),
    madeAt: Date.now(), state: 'waits', entries, photos };
}

function title(form) {
  const species = form.elements.speciesName?.value || form.elements.tree?.value;
  return form.dataset.draftOf + (species ? `: ${species}` : '');
}

/** Kept whole; where there is no room for photos, without them. */
async function keep(filing, words, form) {
  try {
    await outbox.keep(filing);
    return true;
  } catch {
    try {
      const lost = filing.photos.length > 0;
      await outbox.keep(Object.assign(filing, { photos: [] }));
      if (lost) {
        tell(form, words.full);
      }
      return true;
    } catch {
      return false;
    }
  }
}

/** So that the phone neither clears it away nor needs an open page to send it. */
async function arrange(person) {
  await navigator.storage?.persist?.().catch(() => false);
  const worker = await navigator.serviceWorker.getRegistration();
  await worker?.sync?.register('filings ' + person).catch(() => null);
  await show();
}

/** By the browser itself: the page that comes back says what is wrong at its fields. */
function native(form, button) {
  enable(form, true);
  form.dataset.native = '';
  form.requestSubmit(button ?? undefined);
}

function tell(form, text) {
  let line = form.querySelector('.sending');
  if (!line) {
    line = document.createElement('p');
    line.className = 'sending note';
    line.setAttribute('role', 'status');
    form.append(line);
  }
  line.textContent = text;
}

/** Says in the page what a filing that is opened again came back with. */
export function tellRefusal(form, refusal) {
  const words = document.getElementById('refused').dataset;
  const box = part('div', 'summary');
  box.setAttribute('role', 'alert');
  box.tabIndex = -1;
  const checks = (refusal.checks ?? []).filter((check) => check.severity !== 'note');
  const asks = checks.some((check) => check.severity === 'question');
  box.append(part('h2', '', asks ? words.asks : words.wrong), part('p', '', refusal.detail ?? refusal.title ?? ''));
  const list = part('ul', '');
  for (const [field, detail] of Object.entries(refusal.errors ?? {})) {
    const item = part('li', '');
    const link = part('a', '', detail);
    link.href = '#' + field;
    item.append(link);
    list.append(item);
  }
  box.append(list);
  form.before(box);
  if (asks) {
    question(form, checks, words, refusal.confirmedFor);
  }
  box.focus();
}

function question(form, checks, words, confirmedFor) {
  form.querySelectorAll('input[type="hidden"][name="confirmedChecks"]').forEach((field) => field.remove());
  const box = part('div', 'note ask');
  box.id = 'confirmedChecks';
  box.append(part('h3', '', words.checks), part('p', '', words.how));
  for (const check of checks.filter((one) => one.severity === 'question')) {
    const label = part('label', 'choice');
    const tick = document.createElement('input');
    tick.type = 'checkbox';
    tick.name = 'confirmedChecks';
    tick.value = check.code;
    const said = part('span', '', check.detail + ' ');
    said.append(part('strong', '', words.right));
    label.append(tick, ' ', said);
    box.append(label);
  }
  const last = [...form.querySelectorAll('[data-step="look"]')].pop();
  if (last) {
    last.querySelector('legend').after(box);
  } else {
    form.querySelector('.actions').before(box);
  }
  if (form.elements.confirmedFor) {
    form.elements.confirmedFor.value = confirmedFor;
  }
}

function part(element, name, text = '') {
  const made = document.createElement(element);
  if (name) {
    made.className = name;
  }
  made.textContent = text;
  return made;
}

/** The filing that the address names, if it is this person's. */
export async function opened() {
  const id = new URLSearchParams(location.hash.slice(1)).get('waiting');
  return id && able && owner() ? outbox.find(owner(), id) : null;
}
