/** What the rules for sweet corn of several insects share. */
import { UCONN_2012 } from '../sources/sources.ts';
import type { InfestationRule } from '../types.ts';
import { FIVE_PLACES_OF_TWENTY } from './sample-size.ts';

export const SWEET_CORN = { crops: ['sweet-corn'], growthHabits: null } as const;
export const NORTHEAST_SWEET_CORN = {
  ...SWEET_CORN,
  region: 'Northeastern United States',
  preferred: true,
  ...UCONN_2012,
} as const;

/** Rules of one table: a share of infested plants at a stage. */
export const infestedPlants = (
  id: string,
  insect: string,
  stages: readonly string[],
  share: number,
  combinedWith: InfestationRule['combinedWith'] = null,
): InfestationRule => ({
  ...NORTHEAST_SWEET_CORN,
  note: stages.includes('tassel')
    ? {
        en: 'The source speaks of the time before tassel: held here from the tassel showing until silk.',
        es: 'La fuente habla del tiempo anterior a la espiga: aquí se aplica desde que asoma la espiga hasta el jilote.',
      }
    : null,
  kind: 'infestation',
  id,
  insect,
  stages,
  unit: 'plants',
  sign: 'infested',
  share,
  shareHigh: null,
  combinedWith,
  ...FIVE_PLACES_OF_TWENTY,
});
