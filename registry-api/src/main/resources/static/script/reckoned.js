// Shows what readings come to where there is no network to ask.
import { FOOT, INCH, figure, points } from './reckon.js';

const FIGURES = ['girth', 'height', 'crown'];

/** What a form's figures come to, as a part of the page; nothing where none is whole. */
export function reckoned(form) {
  const words = document.getElementById('reckoned').dataset;
  const typed = (name) => form.elements[name]?.value;
  const found = FIGURES.map((name) => [name, figure(name, typed)]);
  const metric = document.body.dataset.units === 'metric';
  const part = document.createElement('div');
  part.className = 'worked reckoned';
  const whole = found.filter(([, one]) => one?.metres);
  if (whole.length > 0) {
    part.append(sums(whole, points(...found.map(([, one]) => one)), words, metric), line('p', 'hint', words.note));
    part.append(working(whole, words, metric));
  }
  const wrong = found.filter(([, one]) => one && !one.metres && !one.lacking);
  if (wrong.length > 0) {
    const list = document.createElement('ul');
    list.className = 'note wrong';
    for (const [name, one] of wrong) {
      const item = document.createElement('li');
      const link = line('a', '', `${words[name]}: ${one.impossible ? words.impossible : words.unreadable}`);
      link.href = '#' + (one.unreadable ?? name);
      item.append(link);
      list.append(item);
    }
    part.append(list);
  }
  return part;
}

function line(element, name, text) {
  const made = document.createElement(element);
  made.className = name;
  made.textContent = text;
  return made;
}

function shown(name, metres, metric) {
  if (name === 'girth') {
    return metric ? `${(metres * 100).toFixed(1)} cm` : `${(metres / INCH).toFixed(1)} in`;
  }
  return metric ? `${metres.toFixed(2)} m` : `${(metres / FOOT).toFixed(1)} ft`;
}

function sums(whole, total, words, metric) {
  const list = document.createElement('ul');
  list.className = 'sum';
  const item = (figureOf, name) => {
    const one = document.createElement('li');
    one.append(line('strong', '', figureOf), ' ', line('span', '', name));
    list.append(one);
  };
  for (const [name, one] of whole) {
    item(shown(name, one.metres, metric), words[name]);
  }
  if (total !== null) {
    item(total.toFixed(2), words.points);
  }
  return list;
}

function working(whole, words, metric) {
  const details = document.createElement('details');
  details.append(line('summary', '', words.working));
  const list = document.createElement('ul');
  for (const [name, one] of whole) {
    list.append(line('li', '', `${words[name]} = ${one.formula} = ${shown(name, one.metres, metric)}`));
  }
  list.append(line('li', '', 'P = C + H + W / 4'));
  details.append(list);
  return details;
}
