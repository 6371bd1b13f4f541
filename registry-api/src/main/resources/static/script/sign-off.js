// The entries of a method as soon as it is chosen, where a verifier signs off.
import { chooseMethods } from './readings.js';

document.querySelectorAll('form.sign-off').forEach(chooseMethods);
