import { COMMON_PRACTICE, noted, SDSU_2021, UNH_EXTENSION } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';

const CUCURBITS = { crops: ['squash', 'pumpkin'], insect: 'melittia-cucurbitae', stages: null } as const;
const UNH_CATCH = {
  ...CUCURBITS,
  ...UNH_EXTENSION,
  kind: 'catch-threshold',
  may: 'decide',
  maySource: noted(COMMON_PRACTICE, {
    en: 'The figure is published as one to act on; whether the catch alone decides, or sends people to look, the source does not say. Borers inside the stem are out of reach, so that growers decide by the catch.',
    es: 'La cifra está publicada como de acción; la fuente no dice si la captura decide por sí sola o manda a revisar. Dentro del tallo el barrenador queda fuera de alcance, y por eso se decide por la captura.',
  }),
  decideWithin: {
    days: 5,
    ...noted(SDSU_2021, {
      en: 'Eggs hatch 245–300 °F·d after they are laid: ten days or more in summer, and half of that is left to the oldest of a week. Days worked out here, not printed.',
      es: 'Los huevos eclosionan de 245 a 300 °F·d después de puestos: diez días o más en verano, y a los más viejos de una semana les queda la mitad. Los días se calcularon aquí; no están impresos.',
    }),
  },
  region: 'New Hampshire',
  design: null,
  per: 'week',
  intervalDays: null,
  unless: null,
} as const;

export const rules: readonly ActionRule[] = [
  { ...UNH_CATCH, id: 'squash-vine-borer-bush', growthHabits: ['bush'], threshold: 5 },
  { ...UNH_CATCH, id: 'squash-vine-borer-vining', growthHabits: ['vining'], threshold: 12 },
  {
    ...CUCURBITS,
    ...noted(SDSU_2021, {
      en: 'From emergence until the latest hatch of the first eggs, 1000 + 300 °F·d: the end is added up, not printed in the source.',
      es: 'Desde la emergencia hasta la última eclosión de los primeros huevos, 1000 + 300 °F·d: el final está sumado; la fuente no lo imprime.',
    }),
    kind: 'heat-scout',
    may: 'send-scouting',
    id: 'squash-vine-borer-emergence',
    growthHabits: null,
    region: 'South Dakota',
    modelId: 'melittia-cucurbitae-emergence',
    from: 1000,
    to: 1300,
    lookFor: 'adult-emergence',
    examineUnits: null,
  },
  {
    ...CUCURBITS,
    ...noted(COMMON_PRACTICE, {
      en: 'The published 245–300 °F·d from laying to hatch, counted from the first catch; the source does not say so.',
      es: 'Los 245–300 °F·d publicados de la puesta a la eclosión, contados desde la primera captura; la fuente no lo dice.',
    }),
    kind: 'heat-scout',
    may: 'send-scouting',
    id: 'squash-vine-borer-hatch',
    growthHabits: null,
    region: '',
    modelId: 'melittia-cucurbitae-from-catch',
    from: 245,
    to: 300,
    lookFor: 'egg-hatch',
    examineUnits: null,
  },
];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'melittia-cucurbitae',
    id: 'vine-borer-eggs',
    crops: ['squash', 'pumpkin'],
    stage: 'egg',
    unit: 'plants',
    where: { en: 'flat and brown, on the lower stem', es: 'planos y marrones, en la parte baja del tallo' },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'melittia-cucurbitae',
    id: 'vine-borer-larvae',
    crops: ['squash', 'pumpkin'],
    stage: 'larva',
    unit: 'plants',
    where: {
      en: 'in the base of the stem, behind holes with wet sawdust-like droppings',
      es: 'en la base del tallo, tras agujeros con excremento húmedo como aserrín',
    },
  },
];
