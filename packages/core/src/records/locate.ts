import type { Problem } from '../base/problem.ts';
import type { RecordKind } from './program.ts';

/** Where a record was read: its file, and its row as a spreadsheet numbers it. */
export type Locate = (kind: RecordKind, index: number) => { readonly file?: string; readonly row?: number };

/** For records that came from no file: the table is named, not a row. */
export const unlocated: Locate = (kind) => ({ file: `${kind}.csv` });

/** Words that the program must share with the catalogue. */
export interface KnownWords {
  /** Slugs of the insects the catalogue knows. */
  readonly insects: readonly string[];
  /** The crop's stage words in order of development; null for a crop the catalogue does not know. */
  readonly stagesOf: (crop: string) => readonly string[] | null;
  /** The crop's own word for a stage as written, or null when it has none like it. */
  readonly stage: (crop: string, written: string) => string | null;
}

export interface Context {
  readonly locate: Locate;
  /** Null: words are not checked. */
  readonly words: KnownWords | null;
  readonly report: (problem: Problem) => void;
}
