/** Traps that never catch while others do. */
import { groupBy } from '../base/group-by.ts';
import { gammaQuantile } from '../statistics/incomplete-gamma.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import { oddEnough } from './chance.ts';
import { logProbability } from './counts.ts';
import { askedCheck, type Look } from './expected-catch.ts';
import type { RecordQuestion } from './types.ts';

/** A trap with not one moth in the season. Its place may be poor, so the chance is averaged over how places differ. */
export function trapsThatNeverCatch(looks: readonly Look[]): RecordQuestion[] {
  const traps = [...groupBy(looks, ({ interval }) => interval.trapId).values()];
  return traps.flatMap((visits): RecordQuestion[] => {
    if (visits.some(({ count }) => count > 0)) return [];
    const chance = oddEnough(chanceOfNothing(visits), traps.length);
    if (!chance) return [];
    const nights = visits.reduce((sum, { interval }) => sum + interval.nights, 0);
    const expected = visits.reduce((sum, { byOthers }) => sum + byOthers, 0);
    const checks = visits.map((look) => ({ ...askedCheck(look), expected: look.byOthers }));
    return [{ kind: 'never-catches', nights, expected, checks, farm: visits[0]!.trap.farm, whom: 'scout', ...chance }];
  });
}

const PLACES = 200;
const SHAPE = QUALITY_ASSUMPTIONS.placeShape.value;
/** Places of equal probability, each by what it catches against the mean. */
const habits = Array.from({ length: PLACES }, (_, i) => gammaQuantile((i + 0.5) / PLACES, SHAPE) / SHAPE);

function chanceOfNothing(visits: readonly Look[]): number {
  const given = (habit: number) =>
    Math.exp(
      visits.reduce((sum, { byOthers, dispersion }) => sum + logProbability(0, { mean: habit * byOthers, k: dispersion }), 0),
    );
  return habits.reduce((sum, habit) => sum + given(habit), 0) / PLACES;
}
