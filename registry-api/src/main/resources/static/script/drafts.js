// Forms that were not sent yet, kept in this browser: one for each form's address and person.

const PREFIX = 'draft ';
const DROPPED = new Set(['_csrf', 'go']);

function keyOf(address, person) {
  return PREFIX + person + ' ' + address;
}

/** Reads what is kept; null where nothing is, or where this browser keeps nothing. */
export function read(address, person) {
  try {
    return JSON.parse(localStorage.getItem(keyOf(address, person)));
  } catch {
    return null;
  }
}

export function drop(address, person) {
  try {
    localStorage.removeItem(keyOf(address, person));
  } catch {
    // This browser keeps nothing.
  }
}

function keep(form, address, person) {
  const entries = [...new FormData(form)].filter(([name, value]) => !DROPPED.has(name) && typeof value === 'string');
  try {
    localStorage.setItem(keyOf(address, person), JSON.stringify({ title: form.dataset.draftOf, at: Date.now(), entries }));
  } catch {
    // This browser keeps nothing.
  }
}

/** Every draft of a person, the latest first. */
export function all(person) {
  const drafts = [];
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i);
      const begin = PREFIX + person + ' ';
      if (key.startsWith(begin)) {
        const address = key.slice(begin.length);
        drafts.push({ address, ...read(address, person) });
      }
    }
  } catch {
    // This browser keeps nothing.
  }
  return drafts.sort((a, b) => b.at - a.at);
}

export function when(at) {
  return new Date(at).toLocaleString(document.documentElement.lang, { dateStyle: 'long', timeStyle: 'short' });
}

/**
 * Keeps a form while it is filled in, and offers what was kept where the form is opened anew.
 * @param fill puts entries into the form
 */
export function follow(form, fill) {
  const address = new URL(form.action).pathname;
  const person = form.dataset.person;
  const kept = read(address, person);
  const notice = document.getElementById('draft');
  let waits = 0;
  const soon = () => {
    clearTimeout(waits);
    waits = setTimeout(() => keep(form, address, person), 400);
  };
  form.addEventListener('input', soon);
  form.addEventListener('change', soon);
  form.addEventListener('submit', () => {
    clearTimeout(waits);
    keep(form, address, person);
  });
  if (!kept || !notice || !('fresh' in form.dataset)) {
    return;
  }
  const time = notice.querySelector('.when');
  time.textContent = when(kept.at);
  notice.hidden = false;
  notice.querySelector('[data-draft="continue"]').addEventListener('click', () => {
    fill(kept.entries);
    notice.hidden = true;
  });
  notice.querySelector('[data-draft="drop"]').addEventListener('click', () => {
    drop(address, person);
    notice.hidden = true;
  });
}
