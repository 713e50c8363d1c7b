/** Whether a count is to be asked about before it is saved, and what to hold it against. */
import { day, daysBetween, expectedFrom, type IsoDay, oddSide, type RoundTrap, type RoundView } from '@duskwatch/core';

/** As many neighbours as are read at a glance. */
const AROUND = 3;
const LATELY_DAYS = 8;

/** Nights that a visit on a day counts. */
export const nightsCounted = ({ lastVisit, hungOn }: RoundTrap, on: IsoDay): number =>
  Math.max(0, daysBetween(day(lastVisit?.on ?? hungOn), day(on)));

/** Null when there is nothing to ask. */
export function oddCount(trap: RoundTrap, view: RoundView, on: IsoDay, now: number) {
  const { lastVisit, told } = trap;
  const nights = nightsCounted(trap, on);
  if (told.length === 0 || nights === 0) return null;
  const leftIn = lastVisit && !lastVisit.emptied ? (lastVisit.count ?? 0) : 0;
  const side = oddSide(expectedFrom(told), nights, Math.max(0, now - leftIn));
  if (side === null) return null;
  const last = lastVisit?.count ?? told.at(-1)!.count;
  return { side, last, now, most: trap.most, around: countsAround(trap, view, on) };
}

/** Last counts of the other traps for the insect, as this phone knows them; those of one design are alike. */
function countsAround({ trapId, insect, design }: RoundTrap, { stops }: RoundView, on: IsoDay): number[] {
  const home = stops.findIndex(({ traps }) => traps.some((trap) => trap.trapId === trapId));
  return stops
    .flatMap(({ traps }, index) => traps.map((trap) => ({ trap, away: Math.abs(index - home) })))
    .filter(({ trap }) => trap.trapId !== trapId && trap.insect === insect && trap.design === design)
    .sort((a, b) => a.away - b.away)
    .flatMap(({ trap: { lastVisit } }) =>
      lastVisit?.count != null && lastVisit.condition !== 'unfit' && daysBetween(day(lastVisit.on), day(on)) <= LATELY_DAYS
        ? [lastVisit.count]
        : [],
    )
    .slice(0, AROUND);
}
