/** From a program's records to catches under lures of known age. */

import { type Day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { Program } from '../records/program.ts';
import { weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';
import type { AgedLureCatch } from './lure-decay.ts';
import { type TrapWithHistory, trapHistories } from './trap-histories.ts';

export interface LureAges {
  readonly insect: string;
  readonly observations: readonly AgedLureCatch[];
  /** Visits that could not be used. */
  readonly leftOut: {
    readonly noInformation: number;
    readonly doubtful: number;
    /** No lure recorded before the nights, or one changed in the midst of them. */
    readonly ageUnknown: number;
    /** No other trap under the flight was visited at both ends of the same nights. */
    readonly alone: number;
    /** Beyond what is fitted at once. */
    readonly older: number;
  };
}

/** Effects of traps and nights are fitted together; more visits than this take long. Own choice. */
const MOST_VISITS = 500;

/**
 * One set per insect: visits of exactly the same nights at traps that share a weather source, and with it, roughly, a
 * flight. The trap's own effect takes up its design and place. Newest visits first, where there are very many.
 */
export function lureAgesOf(
  program: Program,
  { on, mostVisits = MOST_VISITS }: { readonly on: Day; readonly mostVisits?: number },
): LureAges[] {
  const flightOf = flights(program);
  return [...groupBy(trapHistories(program, on), ({ trap }) => trap.insect)].map(([insect, traps]) => {
    const tally = { noInformation: 0, doubtful: 0, ageUnknown: 0, alone: 0, older: 0 };
    const aged = traps.flatMap((one) =>
      one.history.intervals
        .filter((interval) => {
          const why = whyNot(interval);
          if (why !== null) tally[why]++;
          return why === null;
        })
        .map((interval) => ({ interval, block: blockOf(flightOf(one), interval) })),
    );
    const shared = [...groupBy(aged, ({ block }) => block).values()].filter((visits) => visits.length > 1).flat();
    tally.alone = aged.length - shared.length;
    const newest = shared.sort((a, b) => b.interval.to - a.interval.to).slice(0, mostVisits);
    tally.older = shared.length - newest.length;
    return { insect, observations: newest.map(observation), leftOut: tally };
  });
}

function whyNot({ count, condition, lureAgeDays, nights }: CatchInterval): 'noInformation' | 'doubtful' | 'ageUnknown' | null {
  if (count === null) return 'noInformation';
  if (condition !== 'fit') return 'doubtful';
  return lureAgeDays === null || lureAgeDays < nights ? 'ageUnknown' : null;
}

/** The weather source of the first field a trap informs; a trap without one shares its flight with no other. */
function flights({ fields, weather, sources: about }: Program): (one: TrapWithHistory) => string {
  const sources = weatherSourcesOf(
    weather.map(({ sourceId }) => sourceId),
    about,
  );
  const byField = new Map(fields.map((field) => [field.fieldId, weatherSourceFor(field, sources)]));
  return ({ trap }) => trap.informs.map((id) => byField.get(id)).find((source) => source) ?? `trap ${trap.trapId}`;
}

const blockOf = (flight: string, { from, to }: CatchInterval): string => `${flight}, ${formatDay(from)} to ${formatDay(to)}`;

const observation = ({ interval, block }: { interval: CatchInterval; block: string }): AgedLureCatch => ({
  trap: interval.trapId,
  block,
  lureAgeDays: interval.lureAgeDays! - interval.nights / 2,
  count: interval.count!,
  nights: interval.nights,
});
