// The measuring desk: the entries of a method as soon as it is chosen, and what they come to while they are typed.
import { chooseMethods, work } from './readings.js';

const form = document.querySelector('form.desk-of-measures');
chooseMethods(form);
const show = work(form);
// A browser that goes back fills in what was typed.
if (!document.getElementById('result') && [...form.querySelectorAll('.entries input')].some((field) => field.value)) {
  show();
}
