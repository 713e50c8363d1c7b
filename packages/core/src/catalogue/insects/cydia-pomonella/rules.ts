import { COMMON_PRACTICE, MSU_CODLING_MOTH, noted } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';

/** No figure for a catch or a sample is at hand: the dates of hatch say when to look. */
const hatch = (generation: 1 | 2, from: number, to: number): ActionRule => ({
  ...noted(MSU_CODLING_MOTH, {
    en: 'From the first hatch to the table’s peak of egg-laying; that people look in this window is common practice, no source.',
    es: 'Desde la primera eclosión hasta el máximo de puesta de la tabla; que se revise en esta ventana es práctica común, sin fuente.',
  }),
  kind: 'heat-scout',
  may: 'send-scouting',
  id: `apple-codling-moth-hatch-${generation}`,
  insect: 'cydia-pomonella',
  crops: ['apple'],
  growthHabits: null,
  stages: null,
  region: '',
  modelId: 'cydia-pomonella-from-biofix',
  from,
  to,
  lookFor: 'egg-hatch',
  examineUnits: null,
});

export const rules: readonly ActionRule[] = [hatch(1, 250, 550), hatch(2, 1250, 1700)];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'cydia-pomonella',
    id: 'codling-moth-larvae-in-fruit',
    crops: ['apple'],
    stage: 'larva',
    unit: 'fruit',
    where: {
      en: 'in young fruit behind a hole with droppings, often at the calyx or where two fruits touch',
      es: 'en el fruto joven tras un agujero con excremento, a menudo en el cáliz o donde se tocan dos frutos',
    },
  },
];
