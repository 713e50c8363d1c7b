import { COMMON_PRACTICE, CUTWORM_EXTENSION, noted } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';

export const rules: readonly ActionRule[] = [
  {
    ...noted(CUTWORM_EXTENSION, {
      en: 'Begins at the rounded 300 °F·d of the one-figure table and ends where the finer table has cutting stop; both count base 50 °F from the same intense capture.',
      es: 'Empieza en los 300 °F·d redondeados de la tabla de una cifra y termina donde la tabla más detallada da por acabado el corte; ambas cuentan sobre base de 50 °F desde la misma captura intensa.',
    }),
    kind: 'heat-scout',
    may: 'send-scouting',
    id: 'corn-black-cutworm-cutting',
    insect: 'agrotis-ipsilon',
    crops: ['sweet-corn', 'field-corn'],
    growthHabits: null,
    stages: null,
    region: 'Midwestern United States',
    modelId: 'agrotis-ipsilon-cutting-stages',
    from: 300,
    to: 641,
    lookFor: 'first-cutting',
    examineUnits: null,
  },
];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'agrotis-ipsilon',
    id: 'cutworm-larvae-on-corn',
    crops: ['sweet-corn', 'field-corn'],
    stage: 'larva',
    unit: 'plants',
    where: {
      en: 'in the soil’s top layer beside seedlings cut, notched or wilting at the ground',
      es: 'en la capa superior del suelo, junto a plántulas cortadas, mordidas o marchitas al ras del suelo',
    },
  },
];
