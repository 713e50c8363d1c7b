import { COMMON_PRACTICE, FROM_MEMORY, noted, OWN_FIGURE, unnamed } from '../sources/sources.ts';
import type { DesignFacts, DesignRatio } from '../types.ts';

export const designs: readonly DesignFacts[] = [
  {
    ...noted(COMMON_PRACTICE, {
      en: 'Base, funnel, lid, lure cage and hanger.',
      es: 'Base, embudo, tapa, jaula del atrayente y gancho.',
    }),
    design: 'bucket',
    name: { en: 'bucket (funnel) trap', es: 'trampa de cubeta (embudo)' },
    heightM: null,
    siting: {
      en: 'Hung from a branch, stake or stand at the crop.',
      es: 'Se cuelga de una rama, una estaca o un soporte junto al cultivo.',
    },
    costUsd: [25, 30],
  },
  {
    ...noted(COMMON_PRACTICE, {
      en: 'The opening stands at about this height (2 ft) all season.',
      es: 'La entrada queda a esta altura, más o menos, toda la temporada.',
    }),
    design: 'mesh-cone',
    name: { en: 'nylon mesh cone trap', es: 'trampa cónica de malla' },
    heightM: 0.6,
    siting: {
      en: 'Tied to a post that is driven first; the opening keeps one height above ground all season.',
      es: 'Se ata a un poste que se clava antes; la entrada mantiene la misma altura sobre el suelo toda la temporada.',
    },
    costUsd: [120, 120],
  },
  {
    ...noted(COMMON_PRACTICE, {
      en: 'About 4 ft. Made to order by a metal shop.',
      es: 'Unos 4 pies. La hace por encargo un taller de metal.',
    }),
    design: 'wire-cone',
    name: { en: 'wire cone trap', es: 'trampa cónica de alambre' },
    heightM: 1.2,
    siting: { en: 'On a base pole, collecting jar on top.', es: 'Sobre un poste de base, con el frasco colector arriba.' },
    costUsd: [250, 275],
  },
  {
    ...FROM_MEMORY,
    design: 'delta',
    name: { en: 'delta trap', es: 'trampa delta' },
    heightM: null,
    siting: {
      en: 'A folded roof over a sticky floor, hung in the canopy; the floor fills up and must be changed.',
      es: 'Un techo doblado sobre un piso pegajoso, colgado en el follaje; el piso se llena y hay que cambiarlo.',
    },
    costUsd: null,
  },
  {
    ...noted(OWN_FIGURE, {
      en: 'Stands for any design that the catalogue holds no facts about.',
      es: 'Vale por cualquier diseño del que el catálogo no tiene datos.',
    }),
    design: 'other',
    name: { en: 'other trap', es: 'otra trampa' },
    heightM: null,
    siting: { en: 'Not in the catalogue.', es: 'No está en el catálogo.' },
    costUsd: null,
  },
];

export const designRatios: readonly DesignRatio[] = [
  {
    ...unnamed({
      en: 'About a third to a half, for corn earworm in sweet corn; read in an extension scouting guide whose author and year are not at hand.',
      es: 'De un tercio a la mitad, para el gusano elotero en maíz dulce; leído en una guía de muestreo de un servicio de extensión cuyo autor y año no están a mano.',
    }),
    insect: 'helicoverpa-zea',
    of: 'mesh-cone',
    against: 'wire-cone',
    low: 1 / 3,
    high: 1 / 2,
  },
];
