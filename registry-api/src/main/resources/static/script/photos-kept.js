// Photos that go with a filing, kept on the phone as soon as they are chosen.
import { able, owner } from './offline.js';
import { shrink, toDataUrl } from './shrink.js';

const { outbox } = self;
const LONGEST_DRAFT = 30 * 24 * 3600 * 1000;

/** Photos of a form: all() of them, and put() to show those kept before. */
export function choosePhotos(form) {
  const section = document.getElementById('with-photos');
  let photos = [];
  if (!section || !able || !owner()) {
    return { all: () => [], put: () => {} };
  }
  section.hidden = false;
  dropOld(new URL(form.action).pathname).catch(() => {});
  const told = section.querySelector('.told');
  const chooser = section.querySelector('input[type="file"]');
  chooser.addEventListener('change', async () => {
    told.textContent = '';
    for (const file of [...chooser.files]) {
      await add(file);
    }
    chooser.value = '';
  });

  async function add(file) {
    if (!file.type.startsWith('image/')) {
      told.textContent = `${file.name}: ${section.dataset.unread}`;
      return;
    }
    const photo = { key: crypto.randomUUID(), name: file.name, shows: 'whole', text: '', credit: credit(), takenOn: day(),
      blob: await shrink(file) };
    photos.push(photo);
    try {
      await remember();
    } catch {
      photos = photos.filter((one) => one !== photo);
      told.textContent = `${file.name}: ${section.dataset.full}`;
      return;
    }
    await showOne(photo);
  }

  const day = () => form.elements.measuredOn?.value ?? '';
  const credit = () => (form.elements.measuredBy?.value ?? '').split(',')[0].trim();

  /** With the unfinished form, under its key. */
  function remember() {
    return outbox.keep({ person: owner(), id: form.elements.key.value, state: 'draft', madeAt: Date.now(), photos,
      address: new URL(form.action).pathname, title: form.dataset.draftOf, entries: [] });
  }

  async function showOne(photo) {
    const element = section.querySelector('template').content.cloneNode(true).firstElementChild;
    element.querySelector('legend').textContent = photo.name;
    element.querySelector('img').src = await toDataUrl(photo.blob).catch(() => '');
    for (const field of element.querySelectorAll('[data-name]')) {
      field.value = photo[field.dataset.name];
      field.addEventListener('change', () => {
        photo[field.dataset.name] = field.value;
        remember().catch(() => {});
      });
    }
    element.querySelector('button').addEventListener('click', () => {
      photos = photos.filter((one) => one !== photo);
      element.remove();
      remember().catch(() => {});
    });
    section.querySelector('.several').append(element);
  }

  return {
    all: () => photos,
    put: (kept) => {
      photos = kept.filter((photo) => photo.blob);
      section.querySelector('.several').replaceChildren();
      photos.forEach(showOne);
    },
  };
}

/** Photos of forms that nobody went on with. */
async function dropOld(address) {
  for (const filing of await outbox.list(owner())) {
    if (filing.state === 'draft' && filing.address === address && Date.now() - filing.madeAt > LONGEST_DRAFT) {
      await outbox.drop(filing.person, filing.id);
    }
  }
}
