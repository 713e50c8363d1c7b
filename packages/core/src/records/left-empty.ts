import type { z } from 'zod';
import { type RecordKind, type RecordOf, recordSchemas } from './program.ts';

type LeftEmpty<T> = { readonly [P in keyof T as null extends T[P] ? (undefined extends T[P] ? never : P) : never]: null };

/** What a record of this kind holds where nobody said anything: null in each column that must be there and may be empty. */
export function leftEmpty<K extends RecordKind>(kind: K): LeftEmpty<RecordOf<K>> {
  const shape = Object.entries(recordSchemas[kind].shape as Readonly<Record<string, z.ZodType>>);
  const empty = shape.filter(([, column]) => column.safeParse(null).success && !column.safeParse(undefined).success);
  return Object.fromEntries(empty.map(([name]) => [name, null])) as LeftEmpty<RecordOf<K>>;
}
