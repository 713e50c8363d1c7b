/** A small invented week for tests: three fields of two farms, two insects. */
import type { Advice, Verb, WeekCell, WeekField, WeekView } from '@duskwatch/core';

const INSECTS = ['helicoverpa-zea', 'ostrinia-nubilalis'] as const;

interface Said {
  readonly verb: Verb;
  readonly by?: string;
  readonly rate?: number;
  readonly because?: Advice['because'];
}

const cell = (field: string, insect: string, { verb, by = undefined, rate, because = [] }: Said): WeekCell => ({
  advice: {
    field,
    insect,
    verb,
    by: by ?? null,
    rate: rate ?? null,
    interval: rate === undefined ? null : [rate / 2, rate * 2],
    intervalDays: null,
    probabilityAbove: null,
    because,
    cautions: [],
    confidence: rate === undefined ? null : 'moderate',
    rule: null,
    source: null,
  },
  line:
    rate === undefined
      ? null
      : {
          design: 'mesh-cone',
          from: '2025-07-01',
          to: '2025-07-11',
          points: [{ from: '2025-07-01', to: '2025-07-11', perNight: rate, low: rate / 2, high: rate * 2 }],
          thresholdPerNight: 1,
        },
});

const field = (name: string, farm: string, crop: string, said: readonly [Said, Said]): WeekField => ({
  fieldId: name.toLowerCase().replaceAll(' ', '-'),
  name,
  farm,
  crop,
  growthHabit: null,
  stage: null,
  cells: said.map((each, index) => cell(name.toLowerCase().replaceAll(' ', '-'), INSECTS[index]!, each)),
});

export const week: WeekView = {
  program: { name: 'Small, invented', invented: true },
  on: '2025-07-12',
  countsTo: '2025-07-11',
  weatherTo: '2025-07-11',
  insects: [
    { id: INSECTS[0], scientificName: 'Helicoverpa zea', commonName: { en: 'corn earworm', es: 'gusano elotero' } },
    { id: INSECTS[1], scientificName: 'Ostrinia nubilalis', commonName: { en: 'European corn borer', es: 'barrenador' } },
  ],
  due: { decisions: [], scouting: [], checks: [], lures: [] },
  fields: [
    field('Strip 10', 'Hollin, north', 'sweet-corn', [{ verb: 'watch', by: '2025-07-15', rate: 0.6 }, { verb: 'none' }]),
    field('Strip 9', 'Hollin, north', 'sweet-corn', [
      { verb: 'decide', by: '2025-07-14', rate: 3.1 },
      {
        verb: 'blind',
        because: [{ kind: 'trap-unusable', trapId: 'T2', design: 'mesh-cone', why: 'unfit', since: '2025-07-09', nights: 3 }],
      },
    ]),
    field('Acre', 'Brook', 'potato', [
      { verb: 'decide', by: '2025-07-13', rate: 1.4 },
      { verb: 'scout', by: '2025-07-13' },
    ]),
  ],
};
