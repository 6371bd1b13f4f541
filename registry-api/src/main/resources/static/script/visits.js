// Packets of visits kept for where there is no network: the one that is opened, or all.
import { able, isAway, owner } from './offline.js';
import { keepPage } from './keep.js';

const packet = document.getElementById('kept-packet');
const all = document.getElementById('keep');

async function keepOpened() {
  if (await keepPage(owner(), location.pathname)) {
    packet.textContent = packet.dataset.kept;
  }
}

async function keepAll() {
  const told = all.querySelector('[role="status"]');
  const addresses = [...document.querySelectorAll('a.packet')].map((link) => link.pathname)
    .filter((address) => address.startsWith('/visits/'));
  told.textContent = all.dataset.keeping;
  let kept = 0;
  for (const address of addresses) {
    kept += await keepPage(owner(), address) ? 1 : 0;
  }
  told.textContent = kept === addresses.length ? all.dataset.kept.replace('#', kept) : all.dataset.failed;
}

if (able && !isAway() && owner()) {
  if (packet) {
    keepOpened();
  }
  if (all) {
    all.hidden = false;
    all.querySelector('button').addEventListener('click', keepAll);
  }
}
