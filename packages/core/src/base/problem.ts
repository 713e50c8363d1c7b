import type { problemSchema } from './problem-schema.ts';
import type { Shape } from './shape.ts';

/** One thing wrong with what somebody gave us, said so that they can mend it. */
export type Problem = Shape<typeof problemSchema>;

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const refuse = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems });
