// Where a verifier signs off or tells of a visit: the entries of a method as soon as it is chosen; kept on the phone until sent.
import { able, owner } from './offline.js';
import { byPhone, opened, tellRefusal } from './phone.js';
import { choosePhotos } from './photos-kept.js';
import { chooseMethods, showMethod, work } from './readings.js';

// Of the page as it is now, not as it was.
const OWN = new Set(['_csrf', 'seen']);

for (const form of document.querySelectorAll('form.sign-off, form.decide')) {
  chooseMethods(form);
  const worked = work(form);
  const photos = choosePhotos(form);
  byPhone(form, (button) => button?.value === 'sign' || button?.value === 'decide', photos);
  if (form.elements.key) {
    self.outbox.find(owner() ?? '', form.elements.key.value).then((kept) => kept && photos.put(kept.photos), () => {});
  }
  opened().then((filing) => {
    if (able && filing && filing.address === new URL(form.action).pathname) {
      fill(form, filing.entries);
      photos.put(filing.photos);
      worked();
      if (filing.refusal) {
        tellRefusal(form, filing.refusal);
      }
    }
  });
}

function fill(form, entries) {
  for (const [name, value] of entries.filter(([field]) => ['girth', 'height', 'crown'].includes(field))) {
    form.elements[name].value = value;
    showMethod(form, name, value);
  }
  for (const field of form.querySelectorAll('[name]')) {
    const values = entries.filter(([name]) => name === field.name).map(([, value]) => value);
    if (field.type === 'radio' || field.type === 'checkbox') {
      field.checked = values.includes(field.value);
    } else if (values.length > 0 && !OWN.has(field.name) && field.tagName !== 'BUTTON') {
      field.value = values[0];
    }
  }
}
