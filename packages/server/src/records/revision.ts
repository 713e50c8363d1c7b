/** A revision as it is sent: who wrote it is known from the session. */
import {
  type CheckRecord,
  type Problem,
  RECORD_KINDS,
  recordSchemas,
  settingsSchema,
  shapeFault,
  withReason,
} from '@duskwatch/core';
import type { Revision, StoredKind } from '@duskwatch/store';
import { z } from 'zod';

const uuidv7 = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, { error: 'expected a UUIDv7 in lower case' });
export const instant = z.iso.datetime({ offset: true }).meta({ example: '2026-07-14T21:05:00.000Z' });
export const STORED_KINDS = [...RECORD_KINDS, 'settings'] as const satisfies readonly StoredKind[];
export const storedKind = z.enum(STORED_KINDS);

const said = {
  revisionId: uuidv7,
  recordId: uuidv7,
  baseRevisionId: uuidv7.nullable(),
  settles: z.array(uuidv7).max(100).exactOptional(),
  at: instant,
};
const schemas = { ...recordSchemas, settings: settingsSchema };
for (const kind of STORED_KINDS) z.globalRegistry.add(schemas[kind], { id: `${kind[0]!.toUpperCase()}${kind.slice(1)}Record` });

/** A record of any kind, or the settings. */
export const recordValue = z.union(STORED_KINDS.map((kind) => schemas[kind]));

const revisionOf: Readonly<Record<string, z.ZodType>> = Object.fromEntries(
  STORED_KINDS.map((kind) => [kind, z.object({ ...said, kind: z.literal(kind), value: schemas[kind].nullable() })]),
);

const anyKind = z.object({ kind: storedKind });
const anyId = z.object({ revisionId: z.string() });

export interface Read {
  /** As sent; null when there was none to read. */
  readonly revisionId: string | null;
  readonly revision: Omit<Revision, 'author'> | null;
  readonly problems: readonly Problem[];
}

/** Reads one revision by itself, so that what is wrong with it is nobody else's trouble. */
export function readRevision(sent: unknown): Read {
  const revisionId = anyId.safeParse(sent).data?.revisionId ?? null;
  const kind = anyKind.safeParse(sent);
  const read = kind.success ? revisionOf[kind.data.kind]!.safeParse(sent) : kind;
  if (read.success) return { revisionId, revision: asWrittenNow(read.data as Omit<Revision, 'author'>), problems: [] };
  const problems = read.error.issues.map(({ path, message }) => {
    const fault = kind.success && kind.data.kind !== 'settings' ? shapeFault(kind.data.kind, String(path[1] ?? '')) : null;
    return {
      where: { column: path.map(String).join('.') },
      got: JSON.stringify(valueAt(sent, path)) ?? 'nothing',
      expected: message.replace(/^Invalid input: expected |^expected /, ''),
      fix: 'Correct it and send it as a new revision.',
      ...(fault && { fault }),
    };
  });
  return { revisionId, revision: null, problems };
}

/** A phone that still runs an older version tells a reason in the note. */
const asWrittenNow = (sent: Omit<Revision, 'author'>): Omit<Revision, 'author'> =>
  sent.kind === 'checks' && sent.value !== null ? { ...sent, value: withReason(sent.value as CheckRecord) } : sent;

const valueAt = (sent: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((inner, part) => (inner as Record<PropertyKey, unknown> | null | undefined)?.[part], sent);
