/** A small invented week for tests: three fields of two farms, two insects. */
import type { CellReason, Verb, WeekCell, WeekField, WeekView } from '@duskwatch/core';

const INSECTS = ['helicoverpa-zea', 'ostrinia-nubilalis'] as const;

interface CellFacts {
  readonly verb: Verb;
  readonly by?: string;
  readonly rate?: number;
  readonly reason?: CellReason;
}

const cell = ({ verb, by, rate, reason }: CellFacts): WeekCell => ({
  advice: {
    verb,
    dueSince: null,
    by: by ?? null,
    rate: rate ?? null,
    interval: rate === undefined ? null : [rate / 2, rate * 2],
    confidence: rate === undefined ? null : 'moderate',
    reason: reason ?? null,
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

const field = (name: string, farm: string, crop: string, said: readonly [CellFacts, CellFacts]): WeekField => ({
  fieldId: name.toLowerCase().replaceAll(' ', '-'),
  name,
  farm,
  crop,
  growthHabit: null,
  stage: null,
  cells: said.map(cell),
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
      { verb: 'blind', reason: { kind: 'trap-unusable', why: 'unfit' } },
    ]),
    field('Acre', 'Brook', 'potato', [
      { verb: 'decide', by: '2025-07-13', rate: 1.4 },
      { verb: 'scout', by: '2025-07-13' },
    ]),
  ],
};
