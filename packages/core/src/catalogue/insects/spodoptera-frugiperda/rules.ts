import { COMMON_PRACTICE, MAINE_2017 } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';
import { infestedPlants, NORTHEAST_SWEET_CORN as NORTHEAST, SENDS_SCOUTING, SWEET_CORN } from '../sweet-corn.ts';

export const rules: readonly ActionRule[] = [
  {
    ...NORTHEAST,
    kind: 'catch-threshold',
    ...SENDS_SCOUTING,
    id: 'sweet-corn-fall-armyworm-catch',
    insect: 'spodoptera-frugiperda',
    stages: ['silk'],
    design: null,
    threshold: 50,
    per: 'week',
    intervalDays: null,
    unless: null,
  },
  {
    ...SWEET_CORN,
    ...MAINE_2017,
    kind: 'catch-threshold',
    ...SENDS_SCOUTING,
    id: 'sweet-corn-fall-armyworm-catch-maine',
    insect: 'spodoptera-frugiperda',
    stages: ['silk'],
    region: 'Maine',
    design: null,
    threshold: 3,
    per: 'week',
    intervalDays: null,
    unless: null,
  },
  infestedPlants('sweet-corn-fall-armyworm-plants', 'spodoptera-frugiperda', ['whorl', 'tassel'], 0.1, {
    insect: 'ostrinia-nubilalis',
    share: 0.15,
  }),
];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'spodoptera-frugiperda',
    id: 'fall-armyworm-larvae-on-corn',
    crops: ['sweet-corn', 'field-corn'],
    stage: 'larva',
    unit: 'plants',
    where: {
      en: 'in the whorl, behind ragged holes and wet droppings; pull the whorl leaf where in doubt',
      es: 'en el cogollo, tras agujeros irregulares y excremento húmedo; en caso de duda, saque la hoja del cogollo',
    },
  },
];
