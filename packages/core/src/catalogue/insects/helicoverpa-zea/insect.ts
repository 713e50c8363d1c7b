import type { HeatRule } from '../../../heat/types.ts';
import { CALIFORNIA_AGRICULTURE_1990, COMMON_PRACTICE, COOP_1993, FROM_MEMORY, noted, USDA_1976 } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel, StageDuration } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

const ARS_HEAT: HeatRule = { method: 'single-sine', cutoff: 'intermediate', lower: 54.7, upper: 91.9, unit: 'F' };

const EGG = 72.9;
const SMALL_LARVA = 147.1;
const PRE_EGG_LAYING = 112.7;

const stages: readonly StageDuration[] = [
  { stage: 'egg', lasts: EGG },
  { stage: 'small-larva', lasts: SMALL_LARVA },
  { stage: 'large-larva', lasts: 217.1 },
  { stage: 'pupa', lasts: 323.1 },
  { stage: 'pre-egg-laying-adult', lasts: PRE_EGG_LAYING },
];

/** A tenth of a degree-day is all that the published figures carry. */
const tenths = (value: number): number => Math.round(value * 10) / 10;

const models: readonly PhenologyModel[] = [
  {
    ...USDA_1976,
    id: 'helicoverpa-zea-life-stages',
    insect: 'helicoverpa-zea',
    name: { en: 'Corn earworm life stages', es: 'Etapas de vida del gusano elotero' },
    heat: ARS_HEAT,
    start: { kind: 'stage' },
    events: [
      { event: 'next-adults', generation: null, from: 760.1, to: null },
      { event: 'first-eggs', generation: null, from: 872.8, to: null },
    ],
    stages,
    note: {
      en: 'Counted from the laying of an egg. Small larvae are instars 1–3, large ones 4–5. The stages add up to 760.2 °F·d where the table prints 760.1; the printed total is kept.',
      es: 'Se cuenta desde la puesta de un huevo. Las larvas pequeñas son los estadios 1–3; las grandes, 4–5. Las etapas suman 760.2 °F·d donde la tabla imprime 760.1; se conserva el total impreso.',
    },
  },
  {
    ...COMMON_PRACTICE,
    id: 'helicoverpa-zea-from-catch',
    insect: 'helicoverpa-zea',
    name: { en: 'Corn earworm from first steady catch', es: 'Gusano elotero desde la primera captura sostenida' },
    heat: ARS_HEAT,
    start: { kind: 'biofix' },
    events: [
      { event: 'first-eggs', generation: 1, from: 0, to: PRE_EGG_LAYING },
      { event: 'egg-hatch', generation: 1, from: EGG, to: tenths(PRE_EGG_LAYING + EGG) },
      { event: 'small-larvae', generation: 1, from: EGG, to: tenths(PRE_EGG_LAYING + EGG + SMALL_LARVA) },
    ],
    stages: [],
    note: {
      en: 'Added up from the stage lengths of USDA ARS-S-127 (1976), not printed there. A trapped moth may lay at once or only after the whole pre-egg-laying time, so every event is a window.',
      es: 'Sumado de las duraciones de etapa de USDA ARS-S-127 (1976); allí no está impreso. Una polilla capturada puede poner enseguida o solo tras todo el tiempo previo a la puesta, así que cada evento es una ventana.',
    },
  },
  {
    ...COOP_1993,
    id: 'helicoverpa-zea-larva-cotton',
    insect: 'helicoverpa-zea',
    name: { en: 'Corn earworm larva, second model', es: 'Larva del gusano elotero, segundo modelo' },
    heat: { method: 'single-sine', cutoff: 'none', lower: 54.5, upper: null, unit: 'F' },
    start: { kind: 'stage' },
    events: [],
    stages: [{ stage: 'larva', lasts: 360.0 }],
    note: {
      en: 'Larvae fed on cotton; other crops may differ.',
      es: 'Larvas alimentadas con algodón; otros cultivos pueden diferir.',
    },
  },
];

export const helicoverpaZea: InsectEntry = {
  insect: {
    id: 'helicoverpa-zea',
    scientificName: 'Helicoverpa zea',
    commonName: { en: 'corn earworm / tomato fruitworm', es: 'gusano elotero / gusano del fruto del tomate' },
    hosts: ['sweet-corn', 'field-corn', 'tomato', 'pepper'],
    feedsOn: ['potato', 'squash', 'pumpkin', 'brassicas', 'beans', 'peas', 'lettuce', 'eggplant'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: {
      rule: { kind: 'sustained-catch', followedBy: 1 },
      ...noted(COMMON_PRACTICE, {
        en: 'A lone moth may be a stray: the flight starts with the catch that the next visit confirms.',
        es: 'Una polilla sola puede ser casual: el vuelo empieza con la captura que la siguiente visita confirma.',
      }),
    },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Stout tan to olive moth, about 4 cm across. One small dark spot in the middle of each forewing; hindwing pale with a broad dark edge. Eyes green while alive.',
        es: 'Polilla robusta, de color canela a oliva, de unos 4 cm de ala a ala. Una mancha oscura pequeña en medio de cada ala delantera; ala trasera pálida con borde ancho oscuro. Ojos verdes mientras vive.',
      },
    },
    lookAlikes: [
      {
        ...CALIFORNIA_AGRICULTURE_1990,
        name: { en: 'false corn earworm', es: 'falso gusano elotero' },
        note: {
          en: 'Comes to traps meant for corn earworm, known from western valleys; count it apart.',
          es: 'Llega a trampas para el gusano elotero; se conoce en valles del oeste. Cuéntelo aparte.',
        },
      },
      {
        ...CALIFORNIA_AGRICULTURE_1990,
        name: { en: 'other owlet moths (Noctuidae)', es: 'otras polillas noctuidas (Noctuidae)' },
        note: {
          en: 'Several enter these traps; count them apart from the target.',
          es: 'Varias entran en estas trampas; cuéntelas aparte de la especie buscada.',
        },
      },
    ],
  },
  models,
  rules,
  recognition,
};
