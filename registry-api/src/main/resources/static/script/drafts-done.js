// What was filed is no draft any more.
import { drop } from './drafts.js';

for (const done of document.querySelectorAll('[data-draft-done]')) {
  drop(done.dataset.draftDone, done.dataset.person);
}
