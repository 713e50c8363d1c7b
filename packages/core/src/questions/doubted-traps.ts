/** Traps that advice is given with a doubt about: whoever stands at them can say what is so. */

import { prepare } from '../advice/prepare.ts';
import { doubtByRecords } from '../advice/soundness.ts';
import { type Day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { Program } from '../records/program.ts';
import { askedCheck, type Look } from './expected-catch.ts';
import type { RecordQuestion } from './types.ts';

/** One question for each doubt, of the checks that it rests on; unlike other kinds it is a matter of one trap, not of the season. */
export function doubtedTraps(program: Program, on: Day, looks: readonly Look[]): RecordQuestion[] {
  const prepared = prepare(program, { on });
  return [...groupBy(looks, ({ interval }) => interval.trapId).values()].flatMap((visits): RecordQuestion[] => {
    const { trap, farm } = visits[0]!.trap;
    const doubt = doubtByRecords(prepared, trap);
    if (doubt === null) return [];
    const { nights, count, expected, chance } = doubt;
    const about = visits.filter(({ interval }) => interval.from >= doubt.since);
    const checks = about.map((look) => ({ ...askedCheck(look), expected: look.byOthers }));
    const asked = { since: formatDay(doubt.since), nights, expected, checks, farm, whom: 'scout' } as const;
    const odds = { probability: chance, inSeason: chance };
    return [
      doubt.kind === 'silent'
        ? { kind: 'silent-trap', ...asked, ...odds }
        : { kind: 'loud-trap', caught: count, ...asked, ...odds },
    ];
  });
}
