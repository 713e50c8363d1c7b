/** What the page and the worker that reads files say to each other. */
import type { Problem, Program, RecordKind, SheetProposal, SheetReading } from '@duskwatch/core';
import type { AnyMatch, Correction, SheetPicture } from '@duskwatch/exchange/sheet';

interface Held {
  readonly fields: Program['fields'];
  readonly traps: Program['traps'];
}

export type Ask =
  | {
      readonly ask: 'propose';
      readonly file: string;
      readonly bytes: Uint8Array;
      readonly held: Held;
      readonly earlier: readonly AnyMatch[];
    }
  | { readonly ask: 'correct'; readonly correction: Correction; readonly answers: Readonly<Record<string, string>> }
  | { readonly ask: 'apply'; readonly answers: Readonly<Record<string, string>> }
  | { readonly ask: 'pack'; readonly importId: string };

export interface Proposed {
  readonly is: 'proposed';
  readonly proposal: SheetProposal;
  readonly pictures: readonly SheetPicture[];
  /** What is answered already, by earlier files; the rest as suggested. */
  readonly answers: Readonly<Record<string, string>>;
}

export interface Applied {
  readonly is: 'applied';
  readonly reading: SheetReading;
  /** Null: a program folder, where nothing had to be matched. */
  readonly match: AnyMatch | null;
  /** How many records there are of each kind. They stay with the worker: a page that took them all over would stand still. */
  readonly counts: Readonly<Record<RecordKind, number>>;
  /** The first of them, to be seen. */
  readonly first: Pick<Program, 'checks' | 'weather'>;
}

/** All that an import sends, written out. */
interface Packed {
  readonly is: 'packed';
  readonly body: Blob;
}

/** What the worker is at; it says more when it is done. */
export interface Progress {
  readonly is: 'progress';
  readonly stage: 'opening' | 'understanding' | 'reading';
}

export type Answer = Proposed | Applied | Packed | { readonly is: 'refused'; readonly problems: readonly Problem[] };
