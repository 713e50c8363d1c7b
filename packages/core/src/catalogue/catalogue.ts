import { crops } from './crops/crops.ts';
import { designRatios, designs } from './designs/designs.ts';
import { insectEntries } from './insects/insects.ts';
import { practices } from './practices/practices.ts';
import type { Catalogue } from './types.ts';

/** Every fact of the trade that ships with Duskwatch. A program's own rules go before it. */
export const catalogue: Catalogue = {
  insects: insectEntries.map(({ insect }) => insect),
  crops,
  models: insectEntries.flatMap(({ models }) => models),
  rules: insectEntries.flatMap(({ rules }) => rules),
  designs,
  designRatios,
  practices,
  recognition: insectEntries.flatMap(({ recognition }) => recognition),
};
