/** Writes what is decided for a season; an empty decision is removed, so that the proposal stands again. */
import type { PlanRecord, PriceRecord, RecordKind, RecordOf } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { keyOfValue, recordName } from '../record/naming.ts';
import { recordsQuery } from '../record/queries.ts';
import { useSay } from '../record/say.ts';
import { useAround } from '../record/useAround.ts';
import type { Base } from '../sync/types.ts';
import { recordWords } from '../words/record.ts';

export interface Held<K extends RecordKind> {
  readonly base: Base;
  readonly value: RecordOf<K>;
}

/** The records of a kind by their natural key, each with what an edit builds on. */
export function useHeld<K extends RecordKind>(kind: K): ReadonlyMap<string, Held<K>> {
  const { data } = useQuery(recordsQuery(kind));
  return new Map(
    (data ?? []).map(({ recordId, revisionId, value }) => [keyOfValue(kind, value), { base: { recordId, revisionId }, value }]),
  );
}

type Write<K extends RecordKind> = (value: RecordOf<K>) => Promise<boolean>;

function useWrite<K extends RecordKind>(kind: K, says: (value: RecordOf<K>) => boolean): Write<K> {
  const held = useHeld(kind);
  const say = useSay();
  const { names } = useAround();
  return (value) => {
    const key = keyOfValue(kind, value);
    const before = held.get(key) ?? null;
    const name = recordName(kind, key, names);
    const text = says(value) ? recordWords.toast.saved(name) : recordWords.toast.removed(name);
    return say(text, { kind, value: says(value) ? value : null, base: before?.base ?? null, before: before?.value ?? null });
  };
}

const DECIDED = ['design', 'traps', 'hangOn', 'takeDownOn', 'lureLifeDays', 'note'] as const;

export const useDecide = (): Write<'plans'> =>
  useWrite('plans', (plan: PlanRecord) => DECIDED.some((property) => plan[property] !== null));

/** A price below zero stands for none. */
export const NO_PRICE = -1;
export const usePrice = (): Write<'prices'> => useWrite('prices', ({ price }: PriceRecord) => price >= 0);
