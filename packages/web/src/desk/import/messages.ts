/** What the page and the worker that reads files say to each other. */
import type { Problem, Program, SheetProposal } from '@duskwatch/core';
import type { AnyMatch, SheetPicture } from '@duskwatch/exchange/sheet';

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
  | { readonly ask: 'apply'; readonly answers: Readonly<Record<string, string>> };

export interface Proposed {
  readonly is: 'proposed';
  readonly proposal: SheetProposal;
  readonly pictures: readonly SheetPicture[];
  /** What is answered already, by earlier files; the rest as suggested. */
  readonly answers: Readonly<Record<string, string>>;
}

export interface Applied {
  readonly is: 'applied';
  readonly match: AnyMatch;
  readonly records: Partial<Pick<Program, 'fields' | 'traps' | 'checks' | 'weather'>>;
}

export type Answer = Proposed | Applied | { readonly is: 'refused'; readonly problems: readonly Problem[] };
