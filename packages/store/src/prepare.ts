/** Revisions as sent become rows as kept, or problems. */
import { type Problem, type Result, refuse } from '@duskwatch/core';
import type { RevisionRow } from './tables.ts';
import type { Arrival, Revision } from './types.ts';
import { keyOf, STORED_KINDS, toJson, valueSchemas } from './values.ts';

const UUID_V7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/;

/** An instant in UTC with milliseconds, so that instants compare as text; null when it is none. */
export function normalInstant(text: string): string | null {
  const ms = INSTANT.test(text) ? Date.parse(text) : Number.NaN;
  return Number.isNaN(ms) ? null : new Date(ms).toISOString();
}

/** What is wrong with who says something and when. */
export function faultsOf(by: { author: string; at: string }): Problem[] {
  const problems: Problem[] = [];
  if (by.author.trim() === '')
    problems.push({ where: { column: 'author' }, got: by.author, expected: 'a name', fix: 'Say who writes.' });
  if (normalInstant(by.at) === null) {
    problems.push({
      where: { column: 'at' },
      got: by.at,
      expected: 'an instant with its zone, as 2026-07-14T21:05:00Z',
      fix: 'Send the instant of writing in ISO 8601.',
    });
  }
  return problems;
}

/** The key of a removal is left empty: only the store knows what is being removed. */
export function prepare(program: string, revisions: readonly Revision[], arrival?: Arrival): Result<RevisionRow[]> {
  const problems: Problem[] = [];
  const prepared: RevisionRow[] = [];
  for (const [index, revision] of revisions.entries()) {
    const faults = [...faultsOf(revision), ...faultsOfIds(revision)];
    const parsed = parseValue(revision);
    faults.push(...parsed.faults);
    if (faults.length > 0) {
      problems.push(...faults.map((fault) => ({ ...fault, where: { ...fault.where, row: index + 1 } })));
      continue;
    }
    prepared.push({
      program_id: program,
      sequence: 0,
      revision_id: revision.revisionId,
      record_id: revision.recordId,
      kind: revision.kind,
      natural_key: parsed.value === null ? '' : keyOf(revision.kind, parsed.value),
      base_revision_id: revision.baseRevisionId,
      settles: revision.settles?.length ? JSON.stringify(revision.settles) : null,
      author: revision.author,
      at: normalInstant(revision.at)!,
      value: parsed.value === null ? null : toJson(revision.kind, parsed.value),
      standing: 'past',
      received_at: arrival?.receivedAt ?? null,
      skew_ms: arrival?.skewMs ?? null,
    });
  }
  return problems.length > 0 ? refuse(...problems) : { ok: true, value: prepared };
}

function parseValue({ kind, value }: Revision): { value: Revision['value']; faults: Problem[] } {
  if (!STORED_KINDS.includes(kind)) {
    const fault = { where: { column: 'kind' }, got: String(kind), expected: STORED_KINDS.join(', '), fix: 'Name a known kind.' };
    return { value: null, faults: [fault] };
  }
  if (value === null) return { value, faults: [] };
  const parsed = valueSchemas[kind].safeParse(value);
  if (parsed.success) return { value: parsed.data, faults: [] };
  return { value: null, faults: parsed.error.issues.map((issue) => valueProblem(issue, value)) };
}

export function valueProblem(issue: { path: PropertyKey[]; message: string }, value: unknown): Problem {
  const got = issue.path.reduce<unknown>((inner, part) => (inner as Record<PropertyKey, unknown> | undefined)?.[part], value);
  return {
    where: { column: issue.path.map(String).join('.') },
    got: JSON.stringify(got) ?? 'nothing',
    expected: issue.message,
    fix: 'Correct the value and send the revision again.',
  };
}

function faultsOfIds(revision: Revision): Problem[] {
  const ids: [string, string][] = [
    ['revisionId', revision.revisionId],
    ['recordId', revision.recordId],
    ...(revision.baseRevisionId === null ? [] : [['baseRevisionId', revision.baseRevisionId] as [string, string]]),
    ...(revision.settles ?? []).map((id): [string, string] => ['settles', id]),
  ];
  const problems = ids
    .filter(([, id]) => !UUID_V7.test(id))
    .map(([column, got]) => ({
      where: { column },
      got,
      expected: 'a UUID of version 7 in lower case',
      fix: 'Make ids with uuidv7().',
    }));
  if (ids.slice(2).some(([, id]) => id === revision.revisionId)) {
    problems.push({
      where: { column: 'baseRevisionId' },
      got: revision.revisionId,
      expected: 'another revision',
      fix: 'Name the revision that was edited, or null for a new record.',
    });
  }
  return problems;
}
