import type { Fault } from './fault.ts';

/** One thing wrong with what somebody gave us, said so that they can mend it. */
export interface Problem {
  /**
   * Where: file, row as a spreadsheet numbers it (the header is row 1), column; or the parameter of a request
   * or option of a command.
   */
  readonly where: { readonly file?: string; readonly row?: number; readonly column?: string; readonly parameter?: string };
  /** What was found there, as written. */
  readonly got: string;
  /** What would have been right. */
  readonly expected: string;
  /** What to do about it. */
  readonly fix: string;
  /** The same as values, for other languages. */
  readonly fault?: Fault;
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const refuse = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems });
