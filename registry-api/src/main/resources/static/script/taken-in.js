// Photos of a saved filing go along into the form: kept on this machine under the key of the filing.
import { able, owner } from './offline.js';

for (const section of able ? document.querySelectorAll('.saved') : []) {
  const form = section.querySelector('form.take');
  const pictures = [...section.querySelectorAll('.photos img')];
  if (!form || pictures.length === 0) {
    continue;
  }
  form.addEventListener('submit', async (event) => {
    if ('kept' in form.dataset) {
      return;
    }
    event.preventDefault();
    form.dataset.kept = '';
    await self.outbox.keep({ person: owner(), id: section.dataset.key, state: 'draft', madeAt: Date.now(), entries: [],
      title: section.querySelector('h2').textContent, address: new URL(form.action).pathname, photos: pictures.map(photo) })
      .catch(() => {});
    form.requestSubmit();
  });
}

function photo(picture) {
  const { key, name, shows, text, takenOn, credit } = picture.dataset;
  const [head, base64] = picture.src.split(',');
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  return { key, name, shows, text, takenOn, credit, blob: new Blob([bytes], { type: head.slice('data:'.length).split(';')[0] }) };
}
