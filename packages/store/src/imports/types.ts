import type { SheetProposal, SheetReading } from '@duskwatch/core';

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
