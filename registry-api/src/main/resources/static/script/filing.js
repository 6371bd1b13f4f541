// Forms in which trees are filed: what scripts add to them. Without scripts all of it is done by the server.
import { follow } from './drafts.js';
import { lacking, lead, show } from './steps.js';
import { chooseMethods, showMethod, work } from './readings.js';
import { offer } from './species.js';
import { locate } from './place.js';
import { byPhone, opened, tellRefusal } from './phone.js';
import { choosePhotos } from './photos-kept.js';
import { owner } from './offline.js';

for (const form of document.querySelectorAll('form.filing')) {
  chooseMethods(form);
  const worked = work(form);
  offer(form);
  locate(form);
  lead(form, (step) => {
    if (step === 'look') {
      lookOver(form);
    }
  });
  const photos = choosePhotos(form);
  follow(form, async (entries) => {
    fill(form, entries);
    worked();
    photos.put((await self.outbox.find(owner() ?? '', form.elements.key.value))?.photos ?? []);
  });
  self.outbox.find(owner() ?? '', form.elements.key.value).then((kept) => kept && photos.put(kept.photos), () => {});
  byPhone(form, (button) => button?.name !== 'go' || button.value === 'file', photos, () => whole(form));
  opened().then((filing) => {
    if (filing && filing.address === new URL(form.action).pathname) {
      fill(form, filing.entries.filter(([name]) => name !== 'step' && name !== 'go'));
      photos.put(filing.photos);
      worked();
      document.getElementById('draft')?.setAttribute('hidden', '');
      lookAgain(form, filing);
    }
  });
}

document.querySelector('.summary[role="alert"]')?.focus();

/** Opened again: at the end, or where what was asked about stands. */
function lookAgain(form, filing) {
  show(form, 'look');
  lookOver(form);
  if (filing.refusal) {
    tellRefusal(form, filing.refusal);
  }
}

/** Whether what a filing needs is there; leads to where it isn't. */
function whole(form) {
  const lack = lacking(form);
  if (!lack) {
    return true;
  }
  show(form, lack.step);
  document.querySelector('.summary[role="alert"]')?.remove();
  const said = document.getElementById('refused').dataset.lacks;
  tellRefusal(form, { detail: said, errors: Object.fromEntries(lack.fields.map((field) => [field,
    form.querySelector(`label[for="${CSS.escape(field)}"]`)?.textContent ?? field])) });
  return false;
}

/** Shows in the last step what stands in the others. */
function lookOver(form) {
  const value = (name) => form.elements[name]?.value ?? '';
  const chosen = form.querySelector('input[name="species"]:checked')?.closest('label').textContent.trim();
  tell('species', chosen || value('speciesName'));
  tell('place', value('location.latitude') && value('location.latitude') + ', ' + value('location.longitude'));
  tell('measuredOn', value('measuredOn'));

  function tell(name, words) {
    const place = form.querySelector(`[data-shows="${name}"]`);
    if (place && words) {
      place.textContent = words;
    }
  }
}

/** Puts what was kept back into the form. */
function fill(form, entries) {
  const kept = new Map();
  for (const [name, value] of entries) {
    kept.set(name, [...(kept.get(name) ?? []), value]);
  }
  for (const figure of ['girth', 'height', 'crown']) {
    if (kept.has(figure)) {
      showMethod(form, figure, kept.get(figure)[0]);
    }
  }
  for (const [name, values] of kept) {
    const fields = [...form.querySelectorAll(`[name="${CSS.escape(name)}"]`)];
    for (const field of fields) {
      if (field.type === 'radio' || field.type === 'checkbox') {
        field.checked = values.includes(field.value);
      } else {
        field.value = values[0];
      }
    }
  }
  const key = kept.get('species');
  if (key && !form.querySelector('input[name="species"]')) {
    form.elements.speciesName.dispatchEvent(new Event('input', { bubbles: true }));
  }
  for (const details of form.querySelectorAll('details')) {
    details.open = [...details.querySelectorAll('input, select')].some((field) =>
      field.type === 'checkbox' ? field.checked : field.value !== '');
  }
  show(form, kept.get('step')?.[0] ?? '');
}
