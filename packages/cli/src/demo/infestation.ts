/** Samples of past seasons: what corn borers had done to sweet corn, as the moths of some nights before had it. Invented. */
import { addDays, type Day, day, formatDay, type SampleRecord } from '@duskwatch/core';
import type { DemoFarm, DemoField } from './farms.ts';
import type { MothsPerNight } from './flights.ts';
import { INSECTS } from './network.ts';
import { randomFor } from './prng.ts';
import { gamma } from './samplers.ts';

/** Log-odds of a plant infested, by ln(1 + moths a night in the farm's traps), so many nights before. */
const BORED_PLANTS = { intercept: -3.4, slope: 1.9, lagDays: 12 } as const;

const EXAMINED = 100;
/** Places in a field differ: shape of a gamma variate on the odds. */
const PLACES = 12;
/** Month and date from which the next round is also a walk through the corn. */
const WALKS = ['06-12', '06-24', '07-06', '07-18', '07-30', '08-11'];

export function pastSamples(
  fields: readonly DemoField[],
  farms: ReadonlyMap<string, DemoFarm>,
  caughtAt: (farm: DemoFarm, year: number) => MothsPerNight | null,
  visitsTo: (farm: DemoFarm) => readonly Day[],
): SampleRecord[] {
  return fields
    .filter(({ crop }) => crop === 'sweet-corn')
    .flatMap((field) => {
      const farm = farms.get(field.farm)!;
      return [2024, 2025]
        .filter((year) => farm.joined <= year)
        .flatMap((year) => {
          const caught = caughtAt(farm, year);
          if (caught === null) return [];
          const rounds = visitsTo(farm);
          return WALKS.flatMap((walk) => {
            const on = rounds.find((round) => round >= day(`${year}-${walk}`));
            return on === undefined ? [] : sampleOn(field, on, caught);
          });
        });
    });
}

function sampleOn(field: DemoField, on: Day, caught: MothsPerNight): SampleRecord {
  const random = randomFor(`bored plants ${field.id} ${on}`);
  const { intercept, slope, lagDays } = BORED_PLANTS;
  const nights = [-2, -1, 0, 1, 2].map((off) => caught(addDays(on, off - lagDays)));
  const perNight = nights.reduce((sum, moths) => sum + moths, 0) / nights.length;
  const odds = Math.exp(intercept + slope * Math.log1p(perNight)) * gamma(random, PLACES, 1);
  const share = odds / (1 + odds);
  const infested = Array.from({ length: EXAMINED }, () => random() < share).filter(Boolean).length;
  return {
    fieldId: field.id,
    insect: INSECTS.ON,
    sampledOn: formatDay(on),
    kind: 'plants',
    unitsExamined: EXAMINED,
    unitsInfested: infested,
    totalCount: null,
  };
}
