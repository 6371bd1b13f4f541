// The steps of a form, without asking the server on the way.
import { isAway } from './offline.js';

/** Shows one step and no other. */
export function show(form, name) {
  const steps = [...form.querySelectorAll('[data-step]')];
  if (!steps.some((step) => step.dataset.step === name)) {
    return;
  }
  for (const step of steps) {
    step.hidden = step.dataset.step !== name;
  }
  form.elements.step.value = name;
  for (const item of form.querySelectorAll('.steps li')) {
    if (item.querySelector('[data-to]').dataset.to === name) {
      item.setAttribute('aria-current', 'step');
    } else {
      item.removeAttribute('aria-current');
    }
  }
}

function focus(form, name) {
  const legend = form.querySelector(`[data-step="${name}"] > legend`);
  legend.tabIndex = -1;
  legend.focus({ preventScroll: true });
  form.scrollIntoView();
}

/** What a step needs, so that the server is asked what to say where it is lacking. */
const NEEDED = {
  where: ['county', 'species', 'location.latitude', 'location.longitude'],
  people: ['measuredOn'],
};

function lacks(form, name) {
  const typed = new FormData(form);
  return (NEEDED[name] ?? []).some((field) => !typed.get(field));
}

/**
 * Has the buttons lead from step to step.
 * @param entered told the name of a step as it is shown
 */
export function lead(form, entered) {
  const names = [...form.querySelectorAll('[data-step]')].map((step) => step.dataset.step);
  form.addEventListener('submit', (event) => {
    const go = event.submitter?.name === 'go' ? event.submitter.value : '';
    const at = names.indexOf(form.elements.step.value);
    const to = go === 'next' ? names[at + 1] : go === 'back' ? names[at - 1] : go.startsWith('to-') ? go.slice(3) : null;
    if (!to || (go === 'next' && !isAway() && lacks(form, names[at]))) {
      return;
    }
    event.preventDefault();
    document.querySelector('.summary[role="alert"]')?.remove();
    show(form, to);
    focus(form, to);
    entered(to);
  });
}

/** The first step without what it needs; by name alone where there is no network to look a species up. */
export function lacking(form) {
  const typed = new FormData(form);
  for (const [step, names] of Object.entries(NEEDED)) {
    const fields = names.map((name) => name === 'species' ? 'speciesName' : name)
      .filter((name) => form.elements[name] && !typed.get(name));
    if (fields.length > 0) {
      return { step, fields };
    }
  }
  if ((form.elements.tree && !typed.get('tree')) || (form.querySelector('[name="condition"]') && !typed.get('condition'))) {
    return { step: '', fields: [form.elements.tree && !typed.get('tree') ? 'tree' : 'condition'] };
  }
  return null;
}
