import { practicesFor } from '../catalogue/look-up.ts';
import { countsInsects } from '../scouting/plan-for.ts';
import { fine, percent } from './figures.ts';
import type { Sampled, SampledUnit, ScoutingWording } from './scouting-types.ts';

const UNITS: Readonly<Record<SampledUnit, readonly [string, string]>> = {
  plants: ['plant', 'plants'],
  ears: ['ear', 'ears'],
  fruit: ['fruit', 'fruit'],
};
const MARKED = { infested: 'infested', eggs: 'with eggs', damaged: 'damaged', 'egg-masses': 'egg masses' } as const;

const units = (n: number, unit: SampledUnit) => `${n} ${UNITS[unit][n === 1 ? 0 : 1]}`;
const found = (total: number, sampled: Sampled) =>
  countsInsects(sampled) ? `${total} egg ${total === 1 ? 'mass' : 'masses'}` : `${total} ${MARKED[sampled.sign]}`;
/** A whole share keeps its digits: 2.5 % is not 3 %. */
const exactShare = (share: number) => (share < 0.1 && share > 0 ? `${fine(share * 100)} %` : percent(share));
const level = (mean: number, sampled: Sampled) =>
  countsInsects(sampled)
    ? `1 egg mass on ${fine(1 / mean)} ${UNITS[sampled.unit][1]}`
    : `${exactShare(mean)} of ${UNITS[sampled.unit][1]} ${MARKED[sampled.sign]}`;
const figure: ScoutingWording['figure'] = (plan) => {
  const text = level(plan.threshold, plan);
  return plan.thresholdHigh === null ? text : text.replace(' %', `–${Math.round(plan.thresholdHigh * 100)} %`);
};
/** Two levels of one kind, the unit said once. */
const between = (low: number, high: number, sampled: Sampled) =>
  countsInsects(sampled)
    ? `1 egg mass on ${fine(1 / low)} and 1 on ${fine(1 / high)} ${UNITS[sampled.unit][1]}`
    : `${exactShare(low)} and ${level(high, sampled)}`;
const inFields = (probability: number) => {
  const of100 = Math.round(probability * 100);
  return of100 === 0 ? 'in fewer than 1 of 100 such fields' : `in ${of100} of 100 such fields`;
};

const upper = (text: string) => `${text[0]!.toUpperCase()}${text.slice(1)}`;

export const scoutingEn: ScoutingWording = {
  units,
  unitName: (unit) => UNITS[unit][1],
  marked: (sign) => MARKED[sign],
  found,
  level,
  figure,
  counts: ({ unit, sign }) =>
    sign === 'egg-masses'
      ? `Write how many egg masses each of the ${UNITS[unit][1]} has, also none.`
      : `A ${UNITS[unit][0]} is ${MARKED[sign]} or it is not: how many insects it has does not matter.`,
  path: ({ places, perPlace }, unit) => [
    'Keep out of the edge: start about twenty paces into the field, and leave the outermost rows alone.',
    `Walk a wide zigzag over the whole field with ${places} places on it, also in low and weedy spots.`,
    `At each place look at ${units(perPlace, unit)} in a row, every few paces, as they come. Do not choose them.`,
    `After place ${places} come back by other rows, to new places between the first ones.`,
  ],
  place: (place, lap, places) => (lap === 1 ? `Place ${place} of ${places}` : `Place ${place} of ${places}, lap ${lap}`),
  answer: { below: 'Stop: below', above: 'Stop: above', 'go-on': 'Go on', 'undecided-at-limit': 'Stop: too close to call' },
  meaning: (judgement, plan) =>
    ({
      below: `The field is below the figure of ${level(plan.threshold, plan)}.`,
      above: `The field is above the figure of ${level(plan.threshold, plan)}.`,
      'go-on': 'Not enough seen yet.',
      'undecided-at-limit': `The field is close to the figure of ${level(plan.threshold, plan)}.`,
    })[judgement],
  toGo: (at, sampled) => {
    if (at.judgement !== 'go-on') return '';
    const most = `${units(at.mostMore, sampled.unit)} more at most.`;
    const clean = at.cleanToBelow === null ? '' : ` ${at.cleanToBelow} clean in a row would end it.`;
    return `${most}${clean}`;
  },
  next: (judgement) =>
    ({
      below: 'Look again in a week, or when the traps say so.',
      above: 'A decision is due, with the grower and a licensed adviser.',
      'go-on': '',
      'undecided-at-limit': 'Talk it over with the grower or an adviser, or sample again in two or three days.',
    })[judgement],
  inFields,
  risks: (plan, atM0, atM1) => [
    `With ${level(plan.test.m0, plan)} it says “above” ${inFields(atM0.above)}.`,
    `With ${level(plan.test.m1, plan)} it says “below” ${inFields(atM1.below)}.`,
  ],
  together: (insect, share, sampled) =>
    `Count ${insect} apart on the same ${UNITS[sampled.unit][1]}: both together reach their figure at ${exactShare(share)}.`,
  noFigure: (insect) =>
    `The catalogue names no figure for ${insect} in this crop. A count tells the share and how sure it is; it gives no answer.`,
  basis: (plan) =>
    `Between ${between(plan.test.m0, plan.test.m1, plan)} either answer may come. Accepted risks ${percent(plan.test.alpha)} and ${percent(plan.test.beta)}; no answer before ${units(plan.minSamples, plan.unit)}, ${plan.maxSamples} at most. What the rule does not give is chosen by Duskwatch.`,
  clumping: ({ clumping, correlation, unit }) => {
    const alike = `Neighbours at one place are taken to be alike: correlation ${fine(correlation)}`;
    const more = `Where infested ${UNITS[unit][1]} stand still closer together, wrong answers come more often: keep to the walk.`;
    if (clumping === null) return `${alike}, as set by hand. ${more}`;
    if (clumping.samples === 0) return `${alike}, an assumption until samples of yours say what each place held. ${more}`;
    const samples = `${clumping.samples} ${clumping.samples === 1 ? 'sample' : 'samples'}`;
    return `${alike}, from ${clumping.places} places of ${samples} of yours, with the assumption weighed in. ${more}`;
  },
  cautions: [
    ...practicesFor('walking-fields').map(({ text }) => text.en),
    'Heat: water, hat, shade at noon. Stop when you feel dizzy.',
  ],
  keepOut: (until, product, hours) =>
    `Keep out until the end of ${until}: ${product}, ${hours} h re-entry on the label, as recorded. The label and local law decide.`,
  sheet: {
    title: 'Scouting sheet',
    date: 'Date',
    scout: 'Scout',
    time: 'Start and end',
    weather: 'Weather',
    stage: 'Crop stage seen',
    lookFor: 'Look for',
    noLook: 'Eggs, larvae or fresh damage, as you know them.',
    walk: 'Where to walk',
    cautions: 'Before you go in',
    when: 'When to stop',
    howTo: (sampled, { perPlace }) =>
      `${countsInsects(sampled) ? `One box for each: write the number of egg masses.` : `One box for each: cross it when ${MARKED[sampled.sign]}, stroke it when clean.`} After the ${perPlace} of a place add up all so far, and stop when the sum is in one of the two columns.`,
    countAll: ({ places, perPlace }, unit) =>
      `One box for each: cross it when infested, stroke it when clean. Look at all ${units(places * perPlace, unit)}: no figure is published at which to stop.`,
    place: 'Place',
    tally: ({ unit }) => `${upper(UNITS[unit][1])} at this place`,
    soFar: (sampled) => (countsInsects(sampled) ? 'Masses so far' : `${upper(MARKED[sampled.sign])} so far`),
    below: 'Stop: below',
    above: 'Stop: above',
    examined: (unit) => `${UNITS[unit][1]} so far`,
    lap: (lap) => `Lap ${lap}`,
    result: 'Result',
    results: ['below', 'above', 'too close to call', 'stopped early'],
    enter: 'Enter it in Duskwatch as a sample of this field: units examined, units infested, total.',
    figure: 'Figure',
    page: (n, of) => `${n} of ${of}`,
    invented: 'Invented demonstration data',
    none: 'No field has anything to scout for on this day.',
  },
};
