import type { AccountTables } from './accounts/tables.ts';
import type { CalendarTables } from './calendars/tables.ts';
import type { FetchTables } from './fetches/tables.ts';
import type { ImportTables } from './imports/tables.ts';
import type { RevisionStanding, StoredKind } from './types.ts';

export interface RevisionRow {
  program_id: string;
  sequence: number;
  revision_id: string;
  record_id: string;
  kind: StoredKind;
  natural_key: string;
  base_revision_id: string | null;
  /** JSON array of revision ids, or null for none. */
  settles: string | null;
  author: string;
  at: string;
  value: string | null;
  standing: RevisionStanding;
  /** When and how far off a server received it; null: written at the database itself. */
  received_at: string | null;
  skew_ms: number | null;
}

export interface Tables extends AccountTables, CalendarTables, FetchTables, ImportTables {
  programs: { program_id: string; last_sequence: number; epoch: string | null };
  revisions: RevisionRow;
}

export const REVISION_COLUMNS = [
  'program_id',
  'sequence',
  'revision_id',
  'record_id',
  'kind',
  'natural_key',
  'base_revision_id',
  'settles',
  'author',
  'at',
  'value',
  'standing',
  'received_at',
  'skew_ms',
] as const satisfies readonly (keyof RevisionRow)[];
