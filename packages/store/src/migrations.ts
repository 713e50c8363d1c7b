/** The schema's history. Each step runs once, in a transaction, and is never edited after its release. */
import { createAccountTables, createPassKeyTables } from './accounts/tables.ts';
import { createCalendarTables } from './calendars/tables.ts';
import { StoreError } from './error.ts';
import { createFetchTables } from './fetches/tables.ts';
import { createImportTables } from './imports/tables.ts';
import { reasonsOutOfNotes } from './reasons-out-of-notes.ts';

export type Flavour = 'sqlite' | 'postgres';

const MIGRATIONS: readonly ((flavour: Flavour) => readonly string[])[] = [
  (flavour) => [
    'create table programs (program_id text primary key, last_sequence integer not null default 0)',
    // Bytes, not a language's alphabet: both databases then list records in the same order.
    `create table revisions (
      program_id text not null references programs (program_id),
      sequence integer not null,
      revision_id text not null,
      record_id text not null,
      kind text not null,
      natural_key text not null ${flavour === 'postgres' ? 'collate "C"' : ''},
      base_revision_id text,
      settles text,
      author text not null,
      at text not null,
      value text,
      standing text not null check (standing in ('current', 'removed', 'rival', 'past')),
      primary key (program_id, sequence)
    ) ${flavour === 'sqlite' ? 'strict' : ''}`,
    'create unique index revisions_id on revisions (program_id, revision_id)',
    'create index revisions_record on revisions (program_id, record_id)',
    `create unique index revisions_current on revisions (program_id, kind, natural_key) where standing = 'current'`,
    `create index revisions_not_current on revisions (program_id, kind, natural_key) where standing <> 'current'`,
    `create index revisions_rival on revisions (program_id) where standing = 'rival'`,
  ],
  createAccountTables,
  (flavour) => [
    // Another one in each database that went its own way: phones tell by it that what they sent may be missing.
    'alter table programs add column epoch text',
    'alter table revisions add column received_at text',
    `alter table revisions add column skew_ms ${flavour === 'postgres' ? 'double precision' : 'integer'}`,
  ],
  createCalendarTables,
  reasonsOutOfNotes,
  createImportTables,
  createPassKeyTables,
  createFetchTables,
];

export const SCHEMA_VERSION = MIGRATIONS.length;

/** The statements that lead from a version to the newest; throws when the database is ahead of this code. */
export function statementsFrom(version: number, flavour: Flavour, name: string): string[] {
  if (version > SCHEMA_VERSION) {
    throw new StoreError(
      'newer-schema',
      `${name} was written by a newer Duskwatch (schema ${version}; this one knows ${SCHEMA_VERSION}). Update Duskwatch, then open it again. Nothing was changed.`,
    );
  }
  return MIGRATIONS.slice(version).flatMap((step) => step(flavour));
}
