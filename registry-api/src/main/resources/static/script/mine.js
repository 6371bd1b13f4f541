// Forms that wait unfinished in this browser.
import './drafts-done.js';
import './waiting.js';
import { all, drop, when } from './drafts.js';

const section = document.getElementById('drafts');
const list = section?.querySelector('ul');

for (const draft of section ? all(section.dataset.person) : []) {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = draft.address;
  link.textContent = draft.title;
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'plain';
  button.textContent = section.dataset.drop;
  button.addEventListener('click', () => {
    drop(draft.address, section.dataset.person);
    item.remove();
    section.hidden = list.children.length === 0;
  });
  item.append(link, ', ' + section.dataset.from + ' ' + when(draft.at) + '. ', button);
  list.append(item);
  section.hidden = false;
}
