/** English names and forms that many sentences use. */
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

/** A treatment whose product is not known is one all the same. */
export const productName = (product: string): string => (product.trim() === '' ? 'a product that nobody wrote down' : product);

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

export const plural = (count: number, one: string, many = `${one}s`) => `${figure(count)} ${count === 1 ? one : many}`;
export const insectName = (id: string) => insectById(id)?.commonName.en ?? id;
export const cropName = (id: string) => cropById(id)?.name.en ?? id.replaceAll('-', ' ');
export const regionEnglish = (region: string) => regionName(region).en;
export const readable = (word: string) => word.replaceAll('-', ' ');
