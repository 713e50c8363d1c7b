/** An invented sound season of a program, seeded: flights, places that differ, and counts that scatter. */

import { addDays, day, formatDay } from '../base/day.ts';
import { emptyProgram, type Program } from '../records/program.ts';
import type { CheckRecord, TrapDesign } from '../records/schema.ts';
import { type Random, randomFrom } from '../statistics/random.testing.ts';

export interface InventedSeason {
  readonly farms?: number;
  readonly k?: number;
  /** All on one farm, visited on the same days. */
  readonly oneFarm?: boolean;
  /** Standard deviation of the ln of what places catch; 0.6 by default. */
  readonly placeLogSd?: number;
  /** Every other farm has wire cones in place of mesh cones, which catch two and a half times as much. */
  readonly designs?: boolean;
  /** Lures lose half of their draw in four weeks, and each station changes them on days of its own. */
  readonly lures?: boolean;
  /** Places change over the season: their ln drifts by this much at a standard deviation. */
  readonly driftLogSd?: number;
}

const KINDS: readonly {
  readonly insect: string;
  readonly design: TrapDesign;
  readonly peak: number;
  readonly perNight: number;
}[] = [
  { insect: 'helicoverpa-zea', design: 'mesh-cone', peak: 75, perNight: 9 },
  { insect: 'ostrinia-nubilalis', design: 'mesh-cone', peak: 30, perNight: 4 },
  { insect: 'spodoptera-frugiperda', design: 'bucket', peak: 95, perNight: 5 },
];
const HUNG = day('2026-05-20');
const SEASON_NIGHTS = 110;

/** Each farm has one trap for each of three insects; its rounds are every three or four days. */
export function inventedSeason(seed: number, season: InventedSeason = {}): Program {
  const { farms = 8, k = 2, oneFarm = false, placeLogSd = 0.6, designs = false, lures = false, driftLogSd = 0 } = season;
  const random = randomFrom(seed);
  const traps = [];
  const checks: CheckRecord[] = [];
  const fields = [];
  const common = roundsOf(random);
  for (let f = 0; f < farms; f++) {
    const rounds = oneFarm ? common : roundsOf(random);
    fields.push({
      fieldId: `field ${f}`,
      farm: oneFarm ? 'farm 0' : `farm ${f}`,
      name: `Field ${f}`,
      crop: 'sweet-corn',
      growthHabit: null,
      plantedOn: null,
      harvestOn: null,
      latitude: null,
      longitude: null,
      timeZone: null,
      weatherSource: null,
    });
    const lureFrom = lures ? Math.floor(28 * random.uniform()) : 0;
    for (const { insect, design: usual, peak, perNight } of KINDS) {
      const wire = designs && usual === 'mesh-cone' && f % 2 === 1;
      const design = wire ? 'wire-cone' : usual;
      const trapId = `${f}-${insect}`;
      const place = Math.exp(placeLogSd * random.normal()) * (wire ? 2.5 : 1);
      const drift = driftLogSd === 0 ? 0 : (driftLogSd * random.normal()) / SEASON_NIGHTS;
      const drawOn = (night: number) => Math.exp(drift * night) * (lures ? 0.5 ** (((night + lureFrom) % 28) / 28) : 1);
      traps.push({
        trapId,
        station: `post ${f}`,
        insect,
        design,
        latitude: null,
        longitude: null,
        hungOn: formatDay(HUNG),
        takenDownOn: null,
        informs: [`field ${f}`],
      });
      rounds.forEach((night, i) => {
        const from = rounds[i - 1] ?? 0;
        let mean = 0;
        for (let n = from; n < night; n++)
          mean += place * drawOn(n) * (0.05 + perNight * Math.exp(-(((n - peak) / 16) ** 2) / 2));
        checks.push({
          trapId,
          checkedOn: formatDay(addDays(HUNG, night)),
          visit: 1,
          targetCount: random.negativeBinomial(mean, k),
          otherCount: random.poisson(0.4 * (night - from)),
          condition: 'fit',
          emptied: true,
          note: null,
        });
      });
    }
  }
  return { ...emptyProgram({ name: 'Invented', invented: true }), fields, traps, checks };
}

function roundsOf(random: Random): number[] {
  const rounds: number[] = [];
  for (let night = 3; night < SEASON_NIGHTS; night += random.uniform() < 0.5 ? 3 : 4) rounds.push(night);
  return rounds;
}

export const ON = addDays(HUNG, SEASON_NIGHTS);

/** The program with some of its checks written otherwise. */
export function rewritten(program: Program, change: (check: CheckRecord) => Partial<CheckRecord>): Program {
  return { ...program, checks: program.checks.map((check) => ({ ...check, ...change(check) })) };
}
