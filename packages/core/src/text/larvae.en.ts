/** English for what the moths caught have left in a field. */
import type { Evidence, LarvaeDates } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';
import type { TemperatureUnit } from '../base/temperature.ts';
import { citation } from '../catalogue/index.ts';
import { exact, heatSpan, percent } from './figures.ts';

type Larvae = Evidence & { readonly kind: 'larvae' };
type Dates = (day: IsoDay) => string;

const STAGE = { egg: 'eggs', 'small-larva': 'small larvae', 'large-larva': 'large larvae', larva: 'larvae' } as const;
const plural = (count: number, one: string) => `${count} ${count === 1 ? one : `${one}s`}`;

/** The first reason of a Scout: `small larvae expected from Fri 11 July on`. */
export function larvaeReason({ lookFor, worthGoing, on }: Larvae, date: Dates): string {
  if (lookFor === 'nothing-yet') return 'the moths caught have hardly begun to lay';
  if (worthGoing === null || worthGoing.method === 'reached') return `mostly ${STAGE[lookFor]} now, by the moths caught`;
  return `small larvae of the moths caught expected from ${date(on)} on`;
}

export function larvaeSentence(item: Larvae, design: string, standing: string, date: Dates, shown: TemperatureUnit): string {
  const caught = `${plural(item.moths, 'moth')} caught from ${date(item.from)} to ${date(item.to)} (${design}, ${plural(item.traps, 'trap')}${
    item.unknownNights === 0 ? '' : `; ${plural(item.unknownNights, 'night')} unknown`
  })`;
  const { egg, beforeLaying, unit } = item.heat;
  const sum = (from: number) => {
    const { span, published } = heatSpan({ from, to: null, unit }, shown, exact);
    return published === null ? span : `${span} (published as ${published})`;
  };
  const laying = beforeLaying === 0 ? '' : `laying within ${sum(beforeLaying)}, `;
  const heat = `${laying}hatch ${sum(egg)} after laying; ${citation(item.source) ?? standing}`;
  return [
    `${caught}: ${mixture(item, date)}.`,
    ...going(item.worthGoing, date),
    ...hatching(item, date),
    ...where(item),
    `By heat: ${heat}.`,
  ].join(' ');
}

function mixture({ shares, on, lookFor }: Larvae, date: Dates): string {
  if (shares === null || lookFor === 'nothing-yet') return `no eggs to speak of yet on ${date(on)}`;
  const parts = (Object.keys(STAGE) as (keyof typeof STAGE)[])
    .filter((stage) => shares[stage] >= 0.005)
    .map((stage) => `${percent(shares[stage])} ${STAGE[stage]}`);
  return `their offspring in the field on ${date(on)} are ${parts.join(', ')}`;
}

function going(dates: LarvaeDates | null, date: Dates): string[] {
  if (dates === null) return [];
  const { early, middle, late, lateOpen, method, years } = dates;
  if (method === 'reached') return ['Worth going now: small larvae are a tenth of them or more.'];
  if (method === 'own-forecast') return [`Worth going from ${date(middle)}, by your own weather forecast.`];
  const how =
    method === 'past-years'
      ? `by ${plural(years, 'past year')} at this source`
      : method === 'normals'
        ? 'by the monthly normals of this source, which has too few years of its own'
        : 'if the coming days are like the last 14';
  return [`Worth going from ${date(middle)} (between ${date(early)} and ${date(late)}${lateOpen ? ' or later' : ''}, ${how}).`];
}

function hatching({ hatch: { ten, half } }: Larvae, date: Dates): string[] {
  if (ten === null) return [];
  return [`A tenth of the eggs has hatched by ${date(ten)}${half === null ? '' : `, half by ${date(half)}`}.`];
}

function where({ places }: Larvae): string[] {
  if (places.length === 0) return [];
  return [
    `Where to look: ${places.map(({ stage, where, source }) => `${STAGE[stage]} ${where.en} (${citation(source) ?? 'from memory'})`).join('; ')}.`,
  ];
}
