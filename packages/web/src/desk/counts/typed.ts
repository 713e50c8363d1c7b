/** What has been put in beside the traps of a day and is not yet saved; kept in this window until it is. */
import type { CheckRecord, IsoDay, RoundTrap, RoundView } from '@duskwatch/core';
import { useSyncExternalStore } from 'react';
import { oddCount } from '../../shared/check/odd-count.ts';
import { checkFrom, holdsSomething, missing, newUnsavedCheck, type UnsavedCheck } from '../../shared/check/unsaved-check.ts';

/** One line of the sheet. */
export interface CountRow {
  readonly station: string;
  readonly trap: RoundTrap;
}

export const NOTHING: UnsavedCheck = newUnsavedCheck(null);

/** In the order of the drive, as the sheets of a round are. */
export const rowsOf = ({ stops }: RoundView): CountRow[] =>
  stops.flatMap(({ station, traps }) => traps.map((trap) => ({ station, trap })));

/** A trap whose visit of the day is in the records already is corrected there and not counted twice. */
export const isCounted = ({ trap: { lastVisit } }: CountRow, on: IsoDay): boolean => lastVisit?.on === on;

const keyOf = (on: IsoDay) => `duskwatch.counts.${on}`;

/** A line is drawn anew when it changes, and no other. */
export class TypedCounts {
  private held: Readonly<Record<string, UnsavedCheck>>;
  private readonly listeners = new Set<() => void>();
  private readonly on: IsoDay;
  private readonly storage: Storage;

  constructor(on: IsoDay, storage: Storage) {
    this.on = on;
    this.storage = storage;
    this.held = read(storage.getItem(keyOf(on)));
  }

  all = (): Readonly<Record<string, UnsavedCheck>> => this.held;
  of = (trapId: string): UnsavedCheck => this.held[trapId] ?? NOTHING;

  /** Lines that hold nothing any more are forgotten. */
  set(changes: Readonly<Record<string, UnsavedCheck>>): void {
    const kept = Object.entries({ ...this.held, ...changes }).filter(
      ([, each]) => holdsSomething(each) || each.condition !== 'fit',
    );
    this.held = Object.fromEntries(kept);
    try {
      if (kept.length === 0) this.storage.removeItem(keyOf(this.on));
      else this.storage.setItem(keyOf(this.on), JSON.stringify(this.held));
    } catch {
      // A full or forbidden storage costs what was typed only when the window is closed.
    }
    for (const tell of this.listeners) tell();
  }

  clear(): void {
    this.set(Object.fromEntries(Object.keys(this.held).map((trapId) => [trapId, NOTHING])));
  }

  subscribe = (listener: () => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };
}

function read(text: string | null): Readonly<Record<string, UnsavedCheck>> {
  try {
    const kept: unknown = JSON.parse(text ?? '{}');
    if (typeof kept !== 'object' || kept === null) return {};
    return Object.fromEntries(Object.entries(kept).map(([trapId, each]) => [trapId, { ...NOTHING, ...each }]));
  } catch {
    return {};
  }
}

export const useTypedOf = (typed: TypedCounts, trapId: string): UnsavedCheck =>
  useSyncExternalStore(typed.subscribe, () => typed.of(trapId));
export const useTyped = (typed: TypedCounts) => useSyncExternalStore(typed.subscribe, typed.all);

export interface Filled {
  readonly checks: readonly CheckRecord[];
  /** Lines that say too little to be a check, by trap, in the order of the sheet. */
  readonly lacking: readonly { readonly trapId: string; readonly what: 'count' | 'unfit-reason' }[];
  /** Traps whose count is far above what was expected of them. */
  readonly odd: readonly string[];
}

/** What the lines say, in the order of the sheet. A line without anything in it is not a check: not counted is not zero. */
export function filled(view: RoundView, rows: readonly CountRow[], typed: Readonly<Record<string, UnsavedCheck>>): Filled {
  const said = rows.flatMap((row) => {
    const draft = typed[row.trap.trapId];
    return draft && !isCounted(row, view.on) ? [{ trap: row.trap, draft }] : [];
  });
  return {
    checks: said.map(({ trap: { trapId }, draft }) => checkFrom(draft, { trapId, checkedOn: view.on, visit: 1 }, null, null)),
    lacking: said.flatMap(({ trap: { trapId }, draft }) => {
      const what = missing(draft);
      return what === null || what === 'lure' ? [] : [{ trapId, what }];
    }),
    odd: said.flatMap(({ trap, draft }) =>
      draft.target !== '' && oddCount(trap, view, view.on, Number(draft.target)) !== null ? [trap.trapId] : [],
    ),
  };
}
