/** A season's review and what a program's records teach, as lines for people. */
import {
  type Day,
  type Estimate,
  english,
  formatDay,
  type Lessons,
  type Problem,
  type RatioTrend,
  type Review,
  type SeasonReview,
  type SeasonTiming,
  type Verb,
} from '@duskwatch/core';
import { alignColumns } from './columns.ts';

const words = english({ temperature: 'C' });

export function reviewLines({ season, through, open, program, farms, verbs }: SeasonReview): string[] {
  const state = open ? `open: known through ${formatDay(through)}` : 'over';
  const read = verbs.days.reduce((sum, farm) => sum + farm.read, 0);
  const checked = verbs.days.reduce((sum, farm) => sum + farm.checked, 0);
  return [
    `Season ${season.year} (${state})`,
    ...alignColumns([
      ['', 'moths', 'traps', 'a night', 'first', '10 %', 'half', '90 %', 'nights unseen'],
      ...program.timing.flatMap(timingRows),
    ]),
    '',
    `Verbs, read as known on ${read} of ${checked} days on which a farm's traps were checked:`,
    ...alignColumns([
      ['farm', 'Scout', 'sampled', 'Decide', 'sampled', 'treated', 'Blind', 'missed', 'lures late', 'cost', 'a decision'],
      ...farms.map((farm) => [farm.farm, ...reviewCells(farm)]),
      ['all', ...reviewCells(program)],
    ]),
    `Followed: a sample or treatment from the first day of the verb until ${verbs.within} days after the last.`,
    answeredLine(program),
    ...(verbs.treatmentsUncalled.length > 0 ? [`Treatments that no verb called for: ${verbs.treatmentsUncalled.length}`] : []),
  ];
}

function answeredLine({ calls: { answered } }: Review): string {
  const { inTime, late, middleDaysLate, unanswered } = answered;
  const by = middleDaysLate === null ? '' : ` (by ${counted(middleDaysLate, 'day')} in the middle)`;
  return `Answered: ${inTime} in time, ${late} late${by}, ${unanswered} not at all.`;
}

function timingRows({ insect, firstCatch, designs }: SeasonTiming): string[][] {
  return designs.map(({ design, traps, caught, passed, unseenNights }) => {
    const by = (share: number) => dayOrDash(passed.find((one) => one.share === share)?.on ?? null);
    const rate = caught ? caught.perNight.toFixed(2) : '–';
    const name = `${words.insect(insect)}, ${design}`;
    return [
      name,
      `${caught?.count ?? 0}`,
      `${traps}`,
      rate,
      dayOrDash(firstCatch?.on ?? null),
      by(0.1),
      by(0.5),
      by(0.9),
      `${unseenNights}`,
    ];
  });
}

function reviewCells({ calls, visits, cost }: Review): string[] {
  const given = (verb: Verb) => `${calls.given[verb]}`;
  const price = (amount: number | null) => (cost.known && amount !== null ? `${amount.toFixed(2)} ${cost.currency}` : 'unknown');
  return [
    given('scout'),
    `${calls.scoutSampled}`,
    given('decide'),
    `${calls.decideSampled}`,
    `${calls.decideTreated}`,
    given('blind'),
    `${visits.missed.length}`,
    `${visits.lateLures.length}`,
    price(cost.known ? cost.total : null),
    cost.known && cost.perDecision === null ? 'none made' : price(cost.known ? cost.perDecision : null),
  ];
}

export function lessonLines({ sideBySide, lures, infestation }: Lessons): string[] {
  return [
    'Side by side, in the same nights',
    ...sideBySide.flatMap(({ insect, learned }) => {
      const name = words.insect(insect);
      if (!learned.known) return [`  ${name}: ${unknown(learned.problem)}`];
      return learned.ratios.flatMap(({ treatment, against, ratio, sharedBlocks, sites, scatter, seasons, trend }) => [
        `  ${name}: ${treatment} catches ${interval(ratio)} times ${against} (${sharedBlocks} shared stretches, ${counted(sites, 'site')}` +
          `${scatter === 'assumed' ? '; how far two traps alike differ is assumed' : ''})`,
        ...seasons.map((one) => `    ${one.season}: ${interval(one.ratio)} (${one.sharedBlocks} shared stretches)`),
        ...(trend ? [`    ${trendText(trend)}`] : []),
      ]);
    }),
    ...(sideBySide.length === 0 ? ['  no two designs or lures stood side by side'] : []),
    'As lures age',
    ...lures.map(({ insect, used, learned }) => {
      const name = words.insect(insect);
      if (!learned.known) return `  ${name}: ${unknown(learned.problem)}`;
      const change = { ...learned.perDay, ...mapped(learned.perDay, (rate) => 100 * Math.expm1(7 * rate)) };
      return `  ${name}: catch changes by ${interval(change)} % a week of age (${used} visits)`;
    }),
    'Catch against infestation',
    ...infestation.map(({ insect, crop, kind, design, used, learned }) => {
      const name = `${words.insect(insect)}, ${kind} of ${crop}, ${design}`;
      if (!learned.known) return `  ${name}: ${unknown(learned.problem)}`;
      const { suggestion, lag } = learned;
      return (
        `  ${name}: a suggestion, not in force: ${suggestion.perNight.toFixed(1)} a night, ${interval(lag)} days before ` +
        `(${used} samples; false alarms ${percent(suggestion.falseAlarms.share)}, misses ${percent(suggestion.misses.share)})`
      );
    }),
    ...(infestation.length === 0 ? ['  no samples in fields with traps'] : []),
  ];
}

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

const trendText = ({ perYear, clear, first, last }: RatioTrend): string =>
  clear
    ? `it has changed from ${short(first.ratio)} in ${first.season} to ${short(last.ratio)} in ${last.season}: by a factor of ${interval(perYear)} a year; one ratio for all years misleads`
    : `no change with the years shows: a factor of ${interval(perYear)} a year`;

const unknown = ({ got, expected, fix }: Problem): string => `not known yet: ${got}; needed: ${expected}. ${fix}`;

const interval = ({ value, low, high, level }: Estimate): string =>
  `${short(value)} (${short(low)} to ${short(high)}, ${percent(level)})`;

const mapped = ({ value, low, high }: Estimate, by: (value: number) => number) => ({
  value: by(value),
  low: by(low),
  high: by(high),
});

const short = (value: number): string => (Number.isInteger(value) ? `${value}` : value.toPrecision(2));
const percent = (share: number): string => (Number.isNaN(share) ? 'unknown' : `${Math.round(100 * share)} %`);
const dayOrDash = (on: Day | null): string => (on === null ? '–' : formatDay(on));
