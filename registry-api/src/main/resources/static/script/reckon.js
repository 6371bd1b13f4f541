// What readings come to, reckoned on the phone where there is no network: values alone, without the uncertainty, which the
// register works out when they are sent. Lengths in metres here; each form of the desk under its own name. Tested beside
// the register's own arithmetic, method by method.
import { Unreadable, length, number } from './lengths.js';

export const INCH = 0.0254;
export const FOOT = 0.3048;
const BREAST_HEIGHT = 4.5 * FOOT;

const sum = (list) => list.reduce((all, one) => all + one, 0);
const mean = (list) => sum(list) / list.length;

/** A figure is the length that a formula gives of entries; need says what they must hold to. */
const FORMS = {
  girth: {
    tape: { lengths: ['girth'], formula: 'C', of: (r) => r.girth },
    string: { lengths: ['length'], formula: 'C', of: (r) => r.length },
    'string-sticks': { counts: ['sticks'], lengths: ['stickLength'], least: { rest: 0, sticks: 0 }, formula: 'm L + r',
      of: (r) => r.sticks * r.stickLength + r.rest, need: (r) => r.rest < r.stickLength },
    diameter: { lists: ['diameters'], formula: 'π d', of: (r) => Math.PI * mean(r.diameters) },
    'half-girth': { lengths: ['halfGirth'], formula: '2 H', of: (r) => 2 * r.halfGirth },
    taper: { lengths: ['lowerGirth', 'lowerHeight', 'upperGirth', 'upperHeight'],
      formula: 'C1 + (C2 - C1) (4.5 - h1) / (h2 - h1)',
      of: (r) => r.lowerGirth + (r.upperGirth - r.lowerGirth) * (BREAST_HEIGHT - r.lowerHeight) / (r.upperHeight - r.lowerHeight),
      need: (r) => r.lowerHeight < BREAST_HEIGHT && r.upperHeight > BREAST_HEIGHT },
    stems: { lists: ['stems'], formula: 'max(C1, C2, ...)', of: (r) => Math.max(...r.stems) },
    biltmore: { lengths: ['diameterRead'], formula: 'π D', of: (r) => Math.PI * r.diameterRead },
    'biltmore-reach': { lengths: ['stickReading', 'reach'], formula: 'π S (S + √(S² + 4 E²)) / (2 E)',
      of: ({ stickReading: s, reach: e }) => Math.PI * s * (s + Math.sqrt(s * s + 4 * e * e)) / (2 * e) },
  },
  height: {
    stick: { lengths: ['treeOnStick', 'referenceOnStick', 'referenceHeight'], formula: 'h T / R',
      of: (r) => r.treeOnStick / r.referenceOnStick * r.referenceHeight },
    shadow: { lengths: ['treeShadow', 'referenceHeight', 'referenceShadow'], formula: 'h Lt / Lr',
      of: (r) => r.treeShadow / r.referenceShadow * r.referenceHeight },
    'equal-arm': { lengths: ['distance'], least: { baseOffset: 0 }, optional: ['baseOffset'], formula: 'D + o',
      of: (r) => r.distance + (r.baseOffset ?? 0) },
    tangent: { lengths: ['horizontalDistance'], angles: ['topAngle', 'baseAngle'], formula: 'D (tan a - tan b)',
      of: (r) => r.horizontalDistance * (r.topAngle - r.baseAngle) },
    'tangent-slope': { lengths: ['slopeDistance'], angles: ['slopeAngle', 'topAngle', 'baseAngle'],
      formula: 's cos g (tan a - tan b)',
      of: (r) => r.slopeDistance * cosine(r.slopeAngle) * (r.topAngle - r.baseAngle) },
    sine: { lengths: ['topDistance', 'baseDistance'], angles: ['topAngle', 'baseAngle'], formula: 'Dt sin a - Db sin b',
      of: (r) => r.topDistance * r.topAngle * cosine(r.topAngle) - r.baseDistance * r.baseAngle * cosine(r.baseAngle) },
    'two-station': { lengths: ['stationsApart'], angles: ['nearTopAngle', 'farTopAngle', 'nearBaseAngle'],
      formula: 'D tan a2 (tan a1 - tan b) / (tan a1 - tan a2)',
      of: (r) => r.stationsApart * r.farTopAngle / (r.nearTopAngle - r.farTopAngle) * (r.nearTopAngle - r.nearBaseAngle),
      need: (r) => r.farTopAngle > 0 && r.nearTopAngle > r.farTopAngle && r.nearTopAngle > r.nearBaseAngle },
    pole: { lengths: ['height'], formula: 'H', of: (r) => r.height },
  },
  crown: {
    axes: { lists: ['axes'], count: 2, formula: '(D1 + ... + Dn) / n', of: (r) => mean(r.axes) },
    spokes: { lists: ['radii'], count: 4, least: { radii: 0 }, formula: '2 (r1 + ... + rn) / n', of: (r) => 2 * mean(r.radii) },
  },
};

/** Of an angle that is given by its tangent. */
function cosine(tangent) {
  return 1 / Math.sqrt(1 + tangent * tangent);
}

/**
 * What was typed for one figure comes to.
 * @param typed gives what stands in a field of the form, by its name
 * @return null where nothing is typed; what is wrong as { unreadable: field }; or { metres, formula }
 */
export function figure(name, typed) {
  const form = FORMS[name][typed(name)];
  const read = {};
  let filled = false;
  const entry = (field, input, least) => {
    const written = (typed(`${name}.${input}`) ?? '').trim();
    if (!written) {
      return undefined;
    }
    filled = true;
    const value = length(written, typed(`${name}.${field}.unit`) ?? 'ft');
    if (!(least === 0 ? value >= 0 : value > 0)) {
      throw new Unreadable(written);
    }
    return value;
  };
  let at = '';
  try {
    for (const field of form?.lists ?? []) {
      read[field] = [];
      for (let place = 1; place <= 8; place++) {
        at = `${field}.${place}`;
        const value = entry(field, at, form.least?.[field]);
        if (value !== undefined) {
          read[field].push(value);
        }
      }
    }
    for (const field of [...form?.lengths ?? [], ...Object.keys(form?.least ?? {}).filter((one) => !form.lists?.includes(one)
      && !form.counts?.includes(one))]) {
      at = field;
      read[field] = entry(field, field, form.least?.[field]);
    }
    for (const field of form?.counts ?? []) {
      at = field;
      const written = (typed(`${name}.${field}`) ?? '').trim();
      read[field] = written ? Math.round(number(written)) : undefined;
      filled ||= written !== '';
    }
    for (const field of form?.angles ?? []) {
      at = field;
      const written = (typed(`${name}.${field}`) ?? '').trim();
      read[field] = written ? tangent(number(written), typed(`${name}.${field}.unit`)) : undefined;
      filled ||= written !== '';
    }
  } catch (fault) {
    if (fault instanceof Unreadable) {
      return { unreadable: `${name}.${at}` };
    }
    throw fault;
  }
  return filled ? whole(form, read) : null;
}

function tangent(value, unit) {
  if (unit === 'pct') {
    return value / 100;
  }
  if (Math.abs(value) >= 90) {
    throw new Unreadable(String(value));
  }
  return Math.tan(value * Math.PI / 180);
}

function whole(form, read) {
  const lacking = Object.entries(read).some(([field, value]) => (value === undefined && !form.optional?.includes(field))
    || (Array.isArray(value) && value.length < (form.count ?? 1)));
  if (lacking) {
    return { lacking: true };
  }
  const metres = !form.need || form.need(read) ? form.of(read) : NaN;
  return Number.isFinite(metres) && metres > 0 ? { metres, formula: form.formula } : { impossible: true };
}

/** Inches, feet and a quarter of the feet, to hundredths as the register writes points; null where a figure is lacking. */
export function points(girth, height, crown) {
  const all = [girth, height, crown].every((one) => one?.metres);
  return all ? girth.metres / INCH + height.metres / FOOT + crown.metres / FOOT / 4 : null;
}

/** The forms of a figure that can be reckoned here. */
export const formsOf = (name) => Object.keys(FORMS[name]);
