import { COMMON_PRACTICE, noted, published } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';

export const HANSON_2015 = published(
  'Hanson et al. 2015, J. Econ. Entomol. 108:1728; Univ. Nebraska CropWatch 2016–2023',
  { author: 'Hanson et al.', year: 2015, title: null, where: 'J. Econ. Entomol. 108:1728' },
  { author: 'Univ. Nebraska Extension', year: 2023, title: 'CropWatch', where: 'Univ. Nebraska CropWatch, 2016–2023' },
);

const MINNESOTA = published('Univ. Minnesota Extension, western bean cutworm', {
  author: 'Univ. Minnesota Extension',
  year: null,
  title: null,
  where: 'Univ. Minnesota Extension, western bean cutworm',
});

/** Half of the flight at 2704 °F·d is recalled; the window only sends people to look. */
export const rules: readonly ActionRule[] = [
  {
    ...noted(MINNESOTA, {
      en: 'Egg masses are looked for between a quarter and half of the flight: 2577 °F·d as published, 2704 from memory.',
      es: 'Las masas de huevos se buscan entre un cuarto y la mitad del vuelo: 2577 °F·d según lo publicado, 2704 de memoria.',
    }),
    kind: 'heat-scout',
    may: 'send-scouting',
    id: 'corn-western-bean-cutworm-eggs',
    insect: 'striacosta-albicosta',
    crops: ['sweet-corn', 'field-corn'],
    growthHabits: null,
    stages: null,
    region: 'Midwestern United States',
    modelId: 'striacosta-albicosta-flight',
    from: 2577,
    to: 2704,
    lookFor: 'flight-25-percent',
    examineUnits: null,
  },
];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'striacosta-albicosta',
    id: 'western-bean-cutworm-eggs-on-corn',
    crops: ['sweet-corn', 'field-corn'],
    stage: 'egg',
    unit: 'plants',
    where: {
      en: 'in masses on the upper side of the top leaves, around tasseling',
      es: 'en masas en el haz de las hojas superiores, hacia la espiga',
    },
  },
];
