/** How far a round has got: pure, from the view, what was written here and what was skipped. */
import {
  type CheckRecord,
  type IsoDay,
  type RoundStop,
  type RoundTrap,
  type RoundView,
  roundLengthKm,
  roundOrder,
  type SkipReason,
  type SkipRecord,
} from '@duskwatch/core';
import { ofKind, type Written } from './written.ts';

/** Every reason, in the order in which they are offered. */
export const OFFERED_SKIPS = Object.keys({
  locked: 1,
  water: 1,
  'keep-out': 1,
  'not-found': 1,
  unsafe: 1,
  'no-time': 1,
  other: 1,
} satisfies Record<SkipReason, 1>) as SkipReason[];

/** A round under way, as the phone keeps it. What was counted is not in here: the outbox holds it. */
export interface Round {
  readonly startedOn: IsoDay;
  /** The last place of the outbox before the round: what comes later belongs to it. A clock may be wrong; this cannot. */
  readonly afterPlace: number;
  /** Stations in driving order, as fixed at the start. */
  readonly order: readonly string[];
  /** Every trap of every station, also those not due. */
  readonly all: boolean;
  /** Traps to check though they are not due: somebody stands before them, or a plan says so. */
  readonly asked?: readonly string[] | undefined;
}

export type TrapState =
  | { readonly kind: 'open' }
  | { readonly kind: 'saved'; readonly check: CheckRecord }
  | { readonly kind: 'skipped'; readonly skip: SkipRecord };

export interface StopProgress {
  readonly stop: RoundStop;
  /** Those the round asks for, and others that were saved all the same. */
  readonly traps: readonly { readonly trap: RoundTrap; readonly state: TrapState }[];
  /** Traps at the station that are not due. */
  readonly others: readonly RoundTrap[];
  readonly done: boolean;
}

export interface Progress {
  readonly stops: readonly StopProgress[];
  /** Traps. */
  readonly saved: number;
  readonly skipped: number;
  readonly total: number;
  readonly lengthKm: number;
}

export const isAsked = (trap: RoundTrap, all: boolean) => all || trap.due || trap.lure?.change === true;

export const stopsAsked = (view: RoundView, all: boolean) => view.stops.filter((stop) => all || stop.due);

/** Stations in driving order and the kilometres past them; from the end that makes it shortest when none is named. */
export function planOrder(view: RoundView, all: boolean, from: string | null): { order: string[]; lengthKm: number } {
  const { stops, lengthKm } = roundOrder(stopsAsked(view, all), from);
  return { order: stops.map(({ station }) => station), lengthKm };
}

/** The stations of a plan that are in the view, in the plan's order. */
export const planned = (view: RoundView, stations: readonly string[]): RoundStop[] =>
  stations.flatMap((station) => view.stops.find((stop) => stop.station === station) ?? []);

/** A round that also asks for one trap: its station comes first where the round does not pass it. */
export function withTrap(round: Round, { station, trapId }: Place): Round {
  const order = round.order.includes(station) ? round.order : [station, ...round.order];
  return { ...round, order, asked: [...new Set([...(round.asked ?? []), trapId])] };
}

/**
 * @param view as it was at the start of the round, before its own checks made traps no longer due
 */
export function progressOf(view: RoundView, round: Round, written: readonly Written[]): Progress {
  const checks = ofRound(round, written, 'checks');
  const skips = ofRound(round, written, 'skips');
  const byStation = new Map(view.stops.map((stop) => [stop.station, stop]));
  const stops = round.order.flatMap((station) => {
    const stop = byStation.get(station);
    return stop ? [stopProgress(stop, round, checks, skips)] : [];
  });
  const states = stops.flatMap(({ traps }) => traps.map(({ state }) => state.kind));
  return {
    stops,
    saved: states.filter((kind) => kind === 'saved').length,
    skipped: states.filter((kind) => kind === 'skipped').length,
    total: states.length,
    lengthKm: roundLengthKm(stops.map(({ stop }) => stop)),
  };
}

type OfRound<K extends 'checks' | 'skips'> = ReadonlyMap<string, Written<K>>;

/** The checks, or the skips, of this round that stand, by trap. */
export function ofRound<K extends 'checks' | 'skips'>(round: Round, written: readonly Written[], kind: K): OfRound<K> {
  // A trap skipped once more on one day is the same record said anew; a second check is another one.
  const since = (each: Written) => (kind === 'skips' ? placeOf(each) : each.firstPlace);
  const own = ofKind(written, kind).filter((each) => since(each) > round.afterPlace && each.value !== null);
  return new Map(own.map((each) => [each.last.trapId, each]));
}

function stopProgress(stop: RoundStop, round: Round, checks: OfRound<'checks'>, skips: OfRound<'skips'>): StopProgress {
  const stateOf = ({ trapId }: RoundTrap): TrapState => {
    const check = checks.get(trapId)?.value;
    if (check) return { kind: 'saved', check };
    const skip = skips.get(trapId)?.value;
    return skip ? { kind: 'skipped', skip } : { kind: 'open' };
  };
  const asked = (trap: RoundTrap) =>
    isAsked(trap, round.all) || checks.has(trap.trapId) || round.asked?.includes(trap.trapId) === true;
  const traps = stop.traps.filter(asked).map((trap) => ({ trap, state: stateOf(trap) }));
  return {
    stop,
    traps,
    others: stop.traps.filter((trap) => !asked(trap)),
    done: traps.every(({ state }) => state.kind !== 'open'),
  };
}

export interface Place {
  readonly station: string;
  readonly trapId: string;
}

/** The next open trap: first at the same station, then along the order, and at its end from the beginning. */
export function nextPlace(progress: Progress, from: Place | null): Place | null {
  const at = progress.stops.findIndex(({ stop }) => stop.station === from?.station);
  const turned = at < 0 ? progress.stops : [...progress.stops.slice(at), ...progress.stops.slice(0, at)];
  for (const { stop, traps } of turned) {
    const open = traps.find(({ trap, state }) => state.kind === 'open' && trap.trapId !== from?.trapId);
    if (open) return { station: stop.station, trapId: open.trap.trapId };
  }
  return null;
}

/** Where somebody was last seen on the round: the stop of the newest check or skip; null before the first. */
export function lastStop({ stops }: Progress, written: readonly Written[]): RoundStop | null {
  const newest = written
    .filter(({ kind, value }) => (kind === 'checks' || kind === 'skips') && value !== null)
    .reduce<Written | null>((best, each) => (best && placeOf(best) > placeOf(each) ? best : each), null);
  const trapId = newest && (newest as Written<'checks' | 'skips'>).last.trapId;
  const at = stops.find(({ traps }) => traps.some(({ trap, state }) => state.kind !== 'open' && trap.trapId === trapId));
  return at?.stop ?? null;
}

const placeOf = ({ entries }: Written) => entries.at(-1)!.place;

/** Second and later visits to a trap on a day are 2, 3, …. */
export function visitNumber(trap: RoundTrap, on: IsoDay, written: readonly Written[]): number {
  const own = ofKind(written, 'checks').flatMap(({ last }) =>
    last.trapId === trap.trapId && last.checkedOn === on ? [last.visit] : [],
  );
  const known = trap.lastVisit?.on === on ? trap.lastVisit.visit : 0;
  return Math.max(known, ...own, 0) + 1;
}
