import { type FlightFitOptions, type FlightFits, fitFlights } from './fit-flights.ts';
import type { SpannedCatch } from './heat-spans.ts';

/** Fits by the content they rest on: a trap is fitted again only when its counts, its heat or the options changed. */
export type FlightCache = Map<string, FlightFits>;

export interface SeasonToFit {
  readonly id: string;
  readonly caught: SpannedCatch;
  readonly options: FlightFitOptions;
}

export interface SeasonFitted {
  readonly id: string;
  readonly fits: FlightFits;
  /** False when it was in the cache. */
  readonly fitted: boolean;
  readonly done: number;
  readonly of: number;
}

/**
 * Fits the seasons of a program one after another and tells after each how far it has come, so that the caller can show
 * progress, yield to others or stop. Fills `cache`; entries that no season uses any more are the caller's to drop.
 */
export function* fitSeasons(seasons: readonly SeasonToFit[], cache: FlightCache): Generator<SeasonFitted, void, undefined> {
  let done = 0;
  for (const { id, caught, options } of seasons) {
    const key = contentKey(caught, options);
    const known = cache.get(key);
    const fits = known ?? fitFlights(caught, options);
    if (!known) cache.set(key, fits);
    done++;
    yield { id, fits, fitted: !known, done, of: seasons.length };
  }
}

/** Everything a fit depends on, as text. */
export function contentKey({ spans, traps, leftOut }: SpannedCatch, { k, unit, maxFlights }: FlightFitOptions): string {
  const head = [k, unit, maxFlights ?? '', traps, leftOut].join(' ');
  return `${head};${spans.map(({ from, to, nights, count }) => `${from} ${to} ${nights} ${count}`).join(';')}`;
}
