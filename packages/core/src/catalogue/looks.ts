/** What a scout looks for, and where on the plant: for each insect and unit that a sample may be taken of. */
import { COMMON_PRACTICE, DELAWARE_KUHAR, SCOUTING_GUIDE } from './sources.ts';
import type { Look } from './types.ts';

export const looks: readonly Look[] = [
  {
    ...SCOUTING_GUIDE,
    note: {
      en: 'Eggs or larvae are the guide’s; where on the ear is common practice, no source.',
      es: 'Huevos o larvas son de la guía; en qué parte de la mazorca es práctica común, sin fuente.',
    },
    insect: 'helicoverpa-zea',
    crops: ['sweet-corn', 'field-corn'],
    unit: 'ears',
    text: {
      en: 'Single eggs on the silks, and larvae under the husk at the ear tip. An ear with either counts.',
      es: 'Huevos sueltos en los estigmas y larvas bajo las brácteas, en la punta de la mazorca. Cuenta la mazorca que tenga alguno.',
    },
  },
  {
    ...DELAWARE_KUHAR,
    note: {
      en: 'Below the flower clusters is the source’s; which leaves and sides is common practice, no source.',
      es: 'Debajo de los racimos de flores es de la fuente; qué hojas y caras es práctica común, sin fuente.',
    },
    insect: 'helicoverpa-zea',
    crops: ['tomato'],
    unit: 'plants',
    text: {
      en: 'Eggs on the leaves just below the flower clusters: both sides of the leaf. A plant with an egg counts.',
      es: 'Huevos en las hojas justo debajo de los racimos de flores, por ambas caras. Cuenta la planta que tenga un huevo.',
    },
  },
  {
    ...DELAWARE_KUHAR,
    note: {
      en: 'Unripe fruit is the source’s; what damage looks like is common practice, no source.',
      es: 'El fruto verde es de la fuente; cómo se ve el daño es práctica común, sin fuente.',
    },
    insect: 'helicoverpa-zea',
    crops: ['tomato'],
    unit: 'fruit',
    text: {
      en: 'Unripe fruit with a hole or a larva, often near the stem end. Look at green fruit only.',
      es: 'Frutos verdes con un agujero o una larva, a menudo junto al pedúnculo. Revise solo frutos verdes.',
    },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'ostrinia-nubilalis',
    crops: ['sweet-corn', 'field-corn'],
    unit: 'plants',
    text: {
      en: 'Fine holes and sawdust-like droppings in the whorl or the tassel, and living larvae in them. Pull the whorl leaf or open the tassel where in doubt.',
      es: 'Agujeros finos y excremento como aserrín en el cogollo o la espiga, con larvas vivas. En caso de duda, saque la hoja del cogollo o abra la espiga.',
    },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'spodoptera-frugiperda',
    crops: ['sweet-corn', 'field-corn'],
    unit: 'plants',
    text: {
      en: 'Ragged holes and wet droppings in the whorl, with a larva in it. Pull the whorl leaf where in doubt.',
      es: 'Agujeros irregulares y excremento húmedo en el cogollo, con la larva dentro. En caso de duda, saque la hoja del cogollo.',
    },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'ostrinia-nubilalis',
    crops: ['potato', 'pepper'],
    unit: 'plants',
    text: {
      en: 'Flat clusters of eggs, like fish scales, on the undersides of leaves. Count the clusters on each plant.',
      es: 'Masas planas de huevos, como escamas de pez, en el envés de las hojas. Cuente las masas de cada planta.',
    },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'agrotis-ipsilon',
    crops: ['sweet-corn', 'field-corn'],
    unit: 'plants',
    text: {
      en: 'Plants cut off or wilting at the ground; loosen the soil beside them for the larva.',
      es: 'Plantas cortadas o marchitas al ras del suelo; remueva la tierra al lado para hallar la larva.',
    },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'melittia-cucurbitae',
    crops: ['squash', 'pumpkin'],
    unit: 'plants',
    text: {
      en: 'Flat brown eggs on the lower stem, and holes with wet sawdust-like droppings at its base.',
      es: 'Huevos planos y marrones en la parte baja del tallo, y agujeros con excremento húmedo como aserrín en su base.',
    },
  },
];

/** What to look for on a unit of a crop; null where the catalogue does not say. */
export const lookFor = (insect: string, crop: string, unit: string): Look | null =>
  looks.find((look) => look.insect === insect && look.unit === unit && look.crops.includes(crop)) ?? null;
