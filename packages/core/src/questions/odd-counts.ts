/** Counts that the traps around and the season do not lead one to expect. */

import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { oddEnough } from './chance.ts';
import { atLeast, atMost, type CountBelief, joint, logProbability } from './counts.ts';
import { askedCheck, type Look, oddness } from './expected-catch.ts';
import type { RecordQuestion, TrapOfFarm } from './types.ts';

export function unlikelyCounts(looks: readonly Look[]): RecordQuestion[] {
  return looks.flatMap((look): RecordQuestion[] => {
    const chance = oddEnough(oddness(look), looks.length);
    if (!chance) return [];
    const side = look.count > look.belief.mean ? 'high' : 'low';
    return [{ kind: 'unlikely-count', side, checks: [askedCheck(look)], farm: look.trap.farm, whom: 'scout', ...chance }];
  });
}

/** How much better the figures must fit the other way round. Own choice. */
const BETTER = Math.log(100);

/**
 * Target and other species written into each other's column: both odd against what is usual, in opposite directions, and
 * likely once exchanged. Two independent tails u, v multiply to q or less with probability q(1 − ln q) (Fisher).
 */
export function swappedColumns(looks: readonly Look[]): RecordQuestion[] {
  const counted = looks.filter(({ interval }) => interval.others !== null);
  const usual = othersBelief(counted);
  return counted.flatMap((look): RecordQuestion[] => {
    const others = look.interval.others!;
    const belief = usual(look);
    const asWritten = logProbability(look.count, look.belief) + logProbability(others, belief);
    const exchanged = logProbability(others, look.belief) + logProbability(look.count, belief);
    if (exchanged - asWritten < BETTER) return [];
    const product =
      others > look.count
        ? atMost(look.count, look.belief) * atLeast(others, belief)
        : atLeast(look.count, look.belief) * atMost(others, belief);
    const chance = oddEnough(Math.min(1, 2 * product * (1 - Math.log(product))), counted.length);
    return chance
      ? [{ kind: 'columns-swapped', checks: [askedCheck(look)], farm: look.trap.farm, whom: 'scout', ...chance }]
      : [];
  });
}

/** Scatter of other species, which nobody traps for, about a trap's own mean. Own choice: as wide as a geometric count. */
const OTHERS_K = 1;

/** Other species at a trap: the mean per night of its other visits, drawn toward that of all traps. */
function othersBelief(counted: readonly Look[]): (look: Look) => CountBelief {
  const sum = (looks: readonly Look[]) =>
    looks.reduce((so, { interval }) => ({ moths: so.moths + interval.others!, nights: so.nights + interval.nights }), {
      moths: 0,
      nights: 0,
    });
  const all = sum(counted);
  const perNight = Math.max(all.moths, 0.5) / Math.max(1, all.nights);
  const shape = ASSUMPTIONS.placeShape.value;
  const byTrap = new Map<TrapOfFarm, ReturnType<typeof sum>>();
  for (const look of counted) {
    const known = byTrap.get(look.trap) ?? { moths: 0, nights: 0 };
    byTrap.set(look.trap, { moths: known.moths + look.interval.others!, nights: known.nights + look.interval.nights });
  }
  return ({ trap, interval }) => {
    const own = byTrap.get(trap)!;
    const moths = shape + own.moths - interval.others!;
    const mean = (interval.nights * moths) / (shape / perNight + own.nights - interval.nights);
    return { mean, k: joint(OTHERS_K, moths) };
  };
}
