/** What to take along on a round: added up from its stops. */
import type { LocalName, RoundStop, RoundTrap } from '@duskwatch/core';

interface Lures {
  readonly insect: string;
  readonly name: LocalName;
  readonly count: number;
}

interface TakeAlong {
  /** Lures to change, by insect, in the order of the stops. */
  readonly lures: readonly Lures[];
  /** Numbers of the stops, from 1, where a lure is changed; where a trap was found unfit; where live moths wait. */
  readonly lureStops: readonly number[];
  readonly unfitStops: readonly number[];
  readonly liveStops: readonly number[];
}

/** Traps whose moths are alive when somebody comes. */
export const keepsAlive = ({ design }: RoundTrap) => design === 'mesh-cone' || design === 'wire-cone';

/**
 * @param stops in the order of driving
 * @param asked whether the round asks for a trap
 */
export function takeAlong(stops: readonly RoundStop[], asked: (trap: RoundTrap) => boolean): TakeAlong {
  const byInsect = new Map<string, Lures>();
  const stopsWith = (has: (trap: RoundTrap) => boolean) =>
    stops.flatMap(({ traps }, index) => (traps.some((trap) => asked(trap) && has(trap)) ? [index + 1] : []));
  const toChange = (trap: RoundTrap) => trap.lure?.change === true;
  for (const trap of stops.flatMap(({ traps }) => traps).filter((each) => asked(each) && toChange(each))) {
    const { insect, insectName: name } = trap;
    byInsect.set(insect, { insect, name, count: (byInsect.get(insect)?.count ?? 0) + 1 });
  }
  return {
    lures: [...byInsect.values()],
    lureStops: stopsWith(toChange),
    unfitStops: stopsWith(({ lastVisit }) => lastVisit?.condition === 'unfit'),
    liveStops: stopsWith(keepsAlive),
  };
}
