// The entries of a method as soon as it is chosen, and what they come to while they are typed.
import { isAway } from './offline.js';

/** Has the choice of a method show its entries; what was typed for another is kept. */
export function chooseMethods(form) {
  const kept = new Map();
  const remember = (figure) => {
    for (const field of form.querySelectorAll(`#${figure}-entries [name], #${figure} > input[type="hidden"]`)) {
      kept.set(field.name, field.value);
    }
  };
  for (const select of form.querySelectorAll('select[data-figure]')) {
    const figure = select.dataset.figure;
    select.parentElement.querySelector('.choose').hidden = true;
    remember(figure);
    select.addEventListener('change', () => {
      remember(figure);
      showMethod(form, figure, select.value);
      for (const hidden of form.querySelectorAll(`#${figure} > input[type="hidden"]`)) {
        hidden.remove();
      }
      const present = new Set();
      for (const field of form.querySelectorAll(`#${figure}-entries [name]`)) {
        present.add(field.name);
        if (kept.has(field.name)) {
          field.value = kept.get(field.name);
        }
      }
      for (const [name, value] of kept) {
        if (name.startsWith(figure + '.') && !present.has(name) && value) {
          const hidden = document.createElement('input');
          hidden.type = 'hidden';
          hidden.name = name;
          hidden.value = value;
          document.getElementById(figure).append(hidden);
        }
      }
    });
  }
}

/** Puts the entries of a method into the page. */
export function showMethod(form, figure, method) {
  const template = form.querySelector(`template[data-figure="${figure}"][data-method="${method}"]`);
  if (template) {
    document.getElementById(figure + '-entries').replaceChildren(template.content.cloneNode(true));
  }
}

const FIGURE = /^(girth|height|crown)(\.|$)/;

/** Shows what the figures come to, a moment after the last key. */
export function work(form) {
  let waits = 0;
  let asked = null;
  const show = async () => {
    const typed = new URLSearchParams([...new FormData(form)]
      .filter(([name, value]) => FIGURE.test(name) && value !== ''));
    asked?.abort();
    const asking = new AbortController();
    asked = asking;
    try {
      const answer = isAway() ? null : await fetch('/measure/worked?' + typed, { signal: asking.signal });
      if (answer?.ok) {
        put(new DOMParser().parseFromString(await answer.text(), 'text/html').body.firstElementChild);
        return;
      }
    } catch {
      // There is no network after all.
    }
    if (!asking.signal.aborted) {
      const { reckoned } = await import('./reckoned.js');
      put(reckoned(form));
    }
  };
  const put = (part) => {
    for (const place of form.querySelectorAll('[data-worked]')) {
      const open = place.querySelector('details')?.open;
      place.replaceChildren(part.cloneNode(true));
      if (open) {
        place.querySelector('details')?.setAttribute('open', '');
      }
    }
  };
  const soon = (event) => {
    if (FIGURE.test(event.target.name ?? '')) {
      clearTimeout(waits);
      waits = setTimeout(show, 500);
    }
  };
  form.addEventListener('input', soon);
  form.addEventListener('change', soon);
  return show;
}
