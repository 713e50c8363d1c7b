/** What the rules for sweet corn of several insects share. */
import { NYSIPM_CATCHES, noted, UCONN_2012 } from '../sources/sources.ts';
import type { InfestationRule } from '../types.ts';
import { FIVE_PLACES_OF_TWENTY } from './sample-size.ts';

export const SWEET_CORN = { crops: ['sweet-corn'], growthHabits: null } as const;
export const NORTHEAST_SWEET_CORN = {
  ...SWEET_CORN,
  region: 'Northeastern United States',
  ...UCONN_2012,
} as const;

/** European corn borer, fall armyworm, western bean cutworm: their catch tells when to look, and the plants decide. */
export const SENDS_SCOUTING = {
  may: 'send-scouting',
  maySource: noted(NYSIPM_CATCHES, {
    en: 'Of the moths trapped in sweet corn only the catch of corn earworm decides by itself.',
    es: 'De las polillas que se trampean en maíz dulce, solo la captura del gusano elotero decide por sí sola.',
  }),
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
  may: 'decide',
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
