import type { Result, SheetProposal, SheetReading } from '@duskwatch/core';
import type { StoredRevision } from '../types.ts';

/** A file whose records came in together, and can be taken back together. */
export interface ImportedFile {
  /** UUIDv7, made by whoever imports: sent twice, it is done once. */
  readonly importId: string;
  readonly file: string;
  readonly reading: SheetReading | null;
  readonly match: SheetProposal['match'];
}

export interface KeptImport extends ImportedFile {
  readonly author: string;
  readonly at: string;
  readonly added: number;
  readonly changed: number;
  readonly undone: { readonly author: string; readonly at: string } | null;
}

export interface ImportStore {
  /** Newest first. */
  list(): Promise<KeptImport[]>;
  /** The revisions that an import wrote, as they stand now; null where there is no such import. */
  revisions(importId: string): Promise<StoredRevision[] | null>;
  /**
   * Says again of every record what was said before the import, and removes what it added. Refused whole, with the first
   * few of them, where records were changed since.
   */
  undo(importId: string, by: { readonly author: string; readonly at: string }): Promise<Result<{ readonly undone: number }>>;
}
