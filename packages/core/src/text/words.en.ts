/** English names and forms that many sentences use. */
import { day, type IsoDay } from '../base/day.ts';
import { cropById, insectById, regionName } from '../catalogue/index.ts';
import { figure } from './figures.ts';
import type { Wording } from './types.ts';

export const verb: Wording['verb'] = {
  watch: 'Watch',
  scout: 'Scout',
  decide: 'Decide',
  covered: 'Covered',
  blind: 'Blind',
  none: 'Out of season',
};

export const design: Wording['design'] = {
  bucket: 'bucket trap',
  'mesh-cone': 'mesh cone',
  'wire-cone': 'wire cone',
  delta: 'delta trap',
  other: 'other design',
};

export const standing: Wording['standing'] = {
  published: 'published',
  practice: 'common practice, no source',
  memory: 'recalled, source not at hand',
  own: 'this program’s own',
  chosen: 'figure chosen by Duskwatch, no source',
};

export const event: Wording['event'] = {
  'set-out-traps': 'time to set out traps',
  'first-moth': 'first moth',
  'first-eggs': 'first eggs',
  'egg-hatch': 'egg hatch',
  'peak-flight': 'peak flight',
  'treatment-period': 'damaging larvae',
  'adult-emergence': 'moths emerging',
  'small-larvae': 'small larvae',
  'large-larvae': 'large larvae',
  'first-cutting': 'first cutting',
  cutting: 'cutting',
  'cutting-slows': 'cutting slows',
  'cutting-stops': 'cutting stops',
  pupation: 'pupation',
  'next-adults': 'next moths',
  'hatch-20-percent': '20 % of eggs hatched',
  'flight-25-percent': 'a quarter of the flight',
  'peak-egg-laying': 'peak egg-laying',
};

const weekday = new Intl.DateTimeFormat('en-GB', { weekday: 'short', timeZone: 'UTC' });
const dayMonth = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' });
const monthDay = new Intl.DateTimeFormat('en-US', { day: 'numeric', month: 'long', timeZone: 'UTC' });
/** How a day is written in a sentence. */
export type Dates = (day: IsoDay) => string;
export const dayFirst: Dates = (text) => {
  const instant = day(text) * 86_400_000;
  return `${weekday.format(instant)} ${dayMonth.format(instant)}`;
};
export const monthFirst: Dates = (text) => {
  const instant = day(text) * 86_400_000;
  return `${weekday.format(instant)} ${monthDay.format(instant)}`;
};
export const plural = (count: number, one: string, many = `${one}s`) => `${figure(count)} ${count === 1 ? one : many}`;
export const insectName = (id: string) => insectById(id)?.commonName.en ?? id;
export const cropName = (id: string) => cropById(id)?.name.en ?? id.replaceAll('-', ' ');
export const regionEnglish = (region: string) => regionName(region).en;
export const readable = (word: string) => word.replaceAll('-', ' ');
