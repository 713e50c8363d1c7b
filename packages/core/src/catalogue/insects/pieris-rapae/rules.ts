import { COMMON_PRACTICE } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';
import { larvaeOnBrassicas } from '../brassicas.ts';

export const rules: readonly ActionRule[] = [larvaeOnBrassicas('brassicas-cabbageworm-larvae', 'pieris-rapae')];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'pieris-rapae',
    id: 'cabbageworm-larvae-on-brassicas',
    crops: ['brassicas'],
    stage: 'larva',
    unit: 'plants',
    where: {
      en: 'along the midribs of leaves and in the heart, velvety green',
      es: 'a lo largo de las nervaduras y en el cogollo; verdes y aterciopeladas',
    },
  },
];
