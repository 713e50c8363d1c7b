/** A record's value as the store writes it: one text for one meaning, so that texts can be compared. */
import { naturalKey, type Program, RECORD_KINDS, type RecordKind, recordSchemas, settingsSchema } from '@duskwatch/core';
import type { StoredKind, ValueOf } from './types.ts';

export const STORED_KINDS: readonly StoredKind[] = [...RECORD_KINDS, 'settings'];
export const valueSchemas = { ...recordSchemas, settings: settingsSchema } as const;

const propertiesOf = Object.fromEntries(
  STORED_KINDS.map((kind) => [kind, Object.keys(valueSchemas[kind].shape)]),
) as unknown as Readonly<Record<StoredKind, readonly string[]>>;

const mayBeLeftOut = Object.fromEntries(
  STORED_KINDS.map((kind) => [
    kind,
    new Set(
      Object.entries(valueSchemas[kind].shape).flatMap(([property, schema]) =>
        schema.safeParse(undefined).success ? [property] : [],
      ),
    ),
  ]),
) as unknown as Readonly<Record<StoredKind, ReadonlySet<string>>>;

/** JSON with the properties in the schema's order, and no others; one that may be left out is, when it says nothing. */
export function toJson(kind: StoredKind, value: ValueOf<StoredKind>): string {
  const source = value as unknown as Record<string, unknown>;
  const ordered: Record<string, unknown> = {};
  for (const property of propertiesOf[kind]) {
    if (source[property] !== null || !mayBeLeftOut[kind].has(property)) ordered[property] = source[property];
  }
  return JSON.stringify(ordered);
}

export function keyOf(kind: StoredKind, value: ValueOf<StoredKind>): string {
  return kind === 'settings' ? 'settings' : (naturalKey[kind] as (record: unknown) => string)(value);
}

/** The values of one kind in a program, or null where the kind is absent. */
export function valuesOf(program: Partial<Program>, kind: StoredKind): readonly ValueOf<StoredKind>[] | null {
  if (kind === 'settings') return program.settings ? [program.settings] : null;
  return program[kind as RecordKind] ?? null;
}
