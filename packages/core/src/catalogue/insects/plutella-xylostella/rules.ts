import { COMMON_PRACTICE } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';
import { larvaeOnBrassicas } from '../brassicas.ts';

export const rules: readonly ActionRule[] = [larvaeOnBrassicas('brassicas-diamondback-larvae', 'plutella-xylostella')];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'plutella-xylostella',
    id: 'diamondback-larvae-on-brassicas',
    crops: ['brassicas'],
    stage: 'larva',
    unit: 'plants',
    where: {
      en: 'on the undersides of leaves and in the heart, wriggling away when touched',
      es: 'en el envés de las hojas y en el cogollo; se retuercen al tocarlas',
    },
  },
];
