// Forms in which trees are filed: what scripts add to them. Without scripts all of it is done by the server.
import { follow } from './drafts.js';
import { lead, show } from './steps.js';
import { chooseMethods, showMethod, work } from './readings.js';
import { offer } from './species.js';
import { locate } from './place.js';

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
  follow(form, (entries) => {
    fill(form, entries);
    worked();
  });
}

document.querySelector('.summary[role="alert"]')?.focus();

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
