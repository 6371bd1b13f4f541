// Lengths and numbers as people write them, in metres: the same that the register reads. Tested beside it.

const IN = 0.0254;
const NUMBER = '([+-]?[0-9.,]*[0-9](?:[.,](?=\\s|$|\\p{L}))?)';
const AMOUNT = NUMBER + '(?:[ \\-]([0-9]{1,3})/([0-9]{1,3}))?';
const UNIT = '([^0-9\\s.,;+\\-][^0-9.,;+\\-]*?\\.?)?';
const WRITTEN = new RegExp(`^${AMOUNT}\\s*${UNIT}(?:\\s*(?:[,;\\-]|\\band\\b)?\\s*${AMOUNT}\\s*${UNIT})?$`, 'u');
const AMBIGUOUS = /^[+-]?[1-9][0-9]{0,2},[0-9]{3}$/;
const GROUPED = /^[+-]?[1-9][0-9]{0,2}(?:(?:,[0-9]{3})+(?:\.[0-9]+)?|(?:\.[0-9]{3})+,[0-9]+|(?:,[0-9]{3}){2,})$/;
const DECIMAL = /^[+-]?[0-9]{0,12}(?:[.,][0-9]{1,12})?$/;
const MARKS = [[/[\u2032\u2019\u2018\u00b4]/g, "'"], [/[\u2033\u201d\u201c]/g, '"'], [/\u2212/g, '-'], [/\u00a0/g, ' '], [/''/g, '"']];
const FRACTIONS = { '\u00bd': '1/2', '\u00bc': '1/4', '\u00be': '3/4', '\u215b': '1/8', '\u215c': '3/8', '\u215d': '5/8',
  '\u215e': '7/8', '\u2153': '1/3', '\u2154': '2/3' };
const METRES = { in: IN, ft: 12 * IN, yd: 36 * IN, mm: 0.001, cm: 0.01, m: 1 };
const WORDS = { in: 'in inch inches "', ft: "ft foot feet '", yd: 'yd yard yards',
  mm: 'mm millimetre millimetres millimeter millimeters', cm: 'cm centimetre centimetres centimeter centimeters',
  m: 'm metre metres meter meters' };
const UNITS = new Map(Object.entries(WORDS).flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit])));

/** What can't be read. */
export class Unreadable extends Error {}

/** A number; NaN never. */
export function number(written) {
  const plain = /[.,]$/.test(written) ? written.slice(0, -1) : written;
  if (AMBIGUOUS.test(plain)) {
    throw new Unreadable(written);
  }
  if (GROUPED.test(plain)) {
    const point = plain.lastIndexOf(',') < plain.lastIndexOf('.') || !plain.includes('.');
    return Number(point ? plain.replaceAll(',', '') : plain.replaceAll('.', '').replace(',', '.'));
  }
  if (!DECIMAL.test(plain) || !/[0-9]/.test(plain)) {
    throw new Unreadable(written);
  }
  return Number(plain.replace(',', '.'));
}

function amount(whole, over, under) {
  const base = number(whole);
  if (!over) {
    return base;
  }
  const part = Number(over) / Number(under);
  if (!(part < 1) || !Number.isInteger(base)) {
    throw new Unreadable(whole);
  }
  return whole.startsWith('-') ? base - part : base + part;
}

function unitOf(word) {
  if (!word?.trim()) {
    return null;
  }
  const unit = UNITS.get(word.trim().toLowerCase().replace(/\.$/, ''));
  if (!unit) {
    throw new Unreadable(word);
  }
  return unit;
}

function plain(entry) {
  let text = entry.trim();
  for (const [mark, meant] of MARKS) {
    text = text.replace(mark, meant);
  }
  for (const [mark, meant] of Object.entries(FRACTIONS)) {
    text = text.replaceAll(mark, ' ' + meant);
  }
  return text.trim().replaceAll('  ', ' ').replace(/^([+-]?)([0-9]{1,3}\/[0-9]{1,3}.*)/, '$10 $2');
}

/** In metres; a number alone has the unit given. */
export function length(entry, unit) {
  const parts = entry.length <= 60 ? plain(entry).match(WRITTEN) : null;
  if (!parts) {
    throw new Unreadable(entry);
  }
  const [, whole, over, under, word, inches, inchesOver, inchesUnder, inchWord] = parts;
  const first = amount(whole, over, under);
  const of = unitOf(word);
  if (inches === undefined) {
    return first * METRES[of ?? unit];
  }
  const second = amount(inches, inchesOver, inchesUnder);
  if (of !== 'ft' || !['in', null].includes(unitOf(inchWord)) || !Number.isInteger(first) || first < 0 || second < 0 || second >= 12) {
    throw new Unreadable(entry);
  }
  return first * METRES.ft + second * METRES.in;
}
