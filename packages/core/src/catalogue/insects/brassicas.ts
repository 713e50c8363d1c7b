/** What the rules for caterpillars on brassicas share. */
import { DELAWARE_UPDATE, noted } from '../sources/sources.ts';
import type { InfestationRule } from '../types.ts';
import { FIVE_PLACES_OF_TWENTY } from './sample-size.ts';

export const larvaeOnBrassicas = (id: string, insect: string): InfestationRule => ({
  ...noted(DELAWARE_UPDATE, {
    en: 'Given for the time after transplanting: held here while leaves grow, until heading.',
    es: 'Se da para después del trasplante: aquí se aplica mientras crecen las hojas, hasta la formación de cabeza.',
  }),
  kind: 'infestation',
  may: 'decide',
  id,
  insect,
  crops: ['brassicas'],
  growthHabits: null,
  stages: ['vegetative'],
  region: 'Delaware',
  unit: 'plants',
  sign: 'infested',
  share: 0.05,
  shareHigh: null,
  combinedWith: null,
  ...FIVE_PLACES_OF_TWENTY,
});
