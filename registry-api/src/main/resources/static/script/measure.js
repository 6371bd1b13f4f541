// The measuring desk: the entries of a method as soon as it is chosen, and what they come to while they are typed, also
// without a network.
import { isAway } from './offline.js';
import { chooseMethods, showMethod, work } from './readings.js';

const form = document.querySelector('form.desk-of-measures');
const asked = new URLSearchParams(location.search);
chooseMethods(form);
const show = work(form);
if ('kept' in document.body.dataset && asked.size > 0) {
  fill();
}
// A browser that goes back fills in what was typed.
if (!document.getElementById('result') && [...form.querySelectorAll('.entries input')].some((field) => field.value)) {
  show();
}
form.addEventListener('submit', (event) => {
  if (isAway()) {
    event.preventDefault();
    show();
    form.querySelector('[data-worked]').scrollIntoView({ block: 'nearest' });
  }
});

/** What the address says, where the page is a kept one. */
function fill() {
  for (const figure of ['girth', 'height', 'crown']) {
    if (asked.has(figure)) {
      form.elements[figure].value = asked.get(figure);
      showMethod(form, figure, asked.get(figure));
    }
  }
  for (const [name, value] of asked) {
    if (form.elements[name]) {
      form.elements[name].value = value;
    }
  }
}
