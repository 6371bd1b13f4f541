// Species offered while their name is typed.

const LONG_ENOUGH = 3;

/** Offers what the register knows by the name in the field. */
export function offer(form) {
  const field = form.elements.speciesName;
  const found = document.getElementById('species-found');
  if (!field || !found) {
    return;
  }
  form.querySelector('button.find').hidden = true;
  let waits = 0;
  let asked = null;
  field.addEventListener('input', () => {
    clearTimeout(waits);
    waits = setTimeout(() => search(), 300);
  });

  async function search() {
    const name = field.value.trim();
    if (name.length < LONG_ENOUGH) {
      found.replaceChildren();
      form.elements.speciesFor.value = '';
      return;
    }
    asked?.abort();
    asked = new AbortController();
    try {
      const answer = await fetch('/api/v1/species?limit=6&query=' + encodeURIComponent(name), { signal: asked.signal });
      if (answer.ok) {
        choices((await answer.json()).items, name);
      }
    } catch {
      // Without a network the name is looked up when the form is sent.
    }
  }

  function choices(items, name) {
    form.elements.speciesFor.value = name;
    if (items.length === 0) {
      found.replaceChildren(document.getElementById('species-none').content.cloneNode(true));
      return;
    }
    const template = document.getElementById('species-choice');
    const group = template.content.cloneNode(true).firstElementChild;
    const called = items.filter((one) => one.rankable
      && [one.commonName, one.scientificName].some((known) => known.toLowerCase() === name.toLowerCase()));
    for (const one of items) {
      group.append(choice(one, called.length === 1 && called[0] === one, template.dataset.genus));
    }
    found.replaceChildren(group);
  }

  function choice(one, chosen, genus) {
    const label = document.createElement('label');
    label.className = 'choice';
    const radio = document.createElement('input');
    radio.type = 'radio';
    radio.name = 'species';
    radio.value = one.key;
    radio.checked = chosen;
    const scientific = document.createElement('i');
    scientific.lang = 'la';
    scientific.textContent = one.scientificName;
    const words = document.createElement('span');
    words.append(one.commonName + ', ', scientific, one.rankable ? '' : ' ' + genus);
    label.append(radio, words);
    return label;
  }
}
