// Several photos at once, each made smaller before it is sent, with words of its own.
import { shrink, toDataUrl } from './shrink.js';

const form = document.getElementById('photos');
const chooser = document.getElementById('file');
const several = document.getElementById('several');
const one = document.getElementById('one');
let chosen = [];

chooser.multiple = true;
chooser.addEventListener('change', show);
form.addEventListener('submit', (event) => {
  if (chosen.length > 0) {
    event.preventDefault();
    send();
  }
});

function show() {
  chosen.forEach((photo) => URL.revokeObjectURL(photo.preview));
  chosen = [...chooser.files].map((file, place) => entry(file, place));
  several.replaceChildren(...chosen.map((photo) => photo.element));
  one.hidden = chosen.length > 0;
}

function entry(file, place) {
  const element = document.getElementById('each-photo').content.cloneNode(true).firstElementChild;
  element.querySelector('legend').textContent = `${place + 1}: ${file.name}`;
  const picture = element.querySelector('img');
  const photo = { file, element, key: crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`, sent: false };
  shrink(file).then((blob) => {
    photo.small = blob;
    photo.preview = URL.createObjectURL(blob);
    toDataUrl(blob).then((address) => {
      picture.src = address;
    });
  });
  return photo;
}

async function send() {
  const button = form.querySelector('.actions button');
  button.disabled = true;
  for (const photo of chosen.filter((each) => !each.sent)) {
    const told = photo.element.querySelector('.told');
    told.textContent = form.dataset.sending;
    told.classList.remove('error');
    try {
      const answer = await fetch(form.dataset.api, { method: 'POST', headers: headers(photo), body: await body(photo) });
      const json = await answer.json().catch(() => ({}));
      photo.sent = answer.ok;
      told.textContent = answer.ok ? '' : [json.detail, ...(json.errors ?? []).map((error) => error.detail)]
        .filter(Boolean).join(' ') || form.dataset.failed;
    } catch {
      told.textContent = form.dataset.failed;
    }
    told.classList.toggle('error', !photo.sent);
    photo.element.hidden = photo.sent;
  }
  button.disabled = false;
  if (chosen.every((photo) => photo.sent)) {
    location.assign(form.dataset.done);
  }
}

function headers(photo) {
  return { 'X-CSRF-TOKEN': form.elements._csrf?.value ?? '', 'Idempotency-Key': photo.key };
}

async function body(photo) {
  const parts = new FormData();
  const small = photo.small ?? await shrink(photo.file);
  parts.append('file', small, 'photo.jpg');
  for (const field of photo.element.querySelectorAll('[data-name]')) {
    parts.append(field.dataset.name, field.value);
  }
  parts.append('takenOn', form.elements.takenOn.value);
  parts.append('credit', form.elements.credit.value);
  return parts;
}
