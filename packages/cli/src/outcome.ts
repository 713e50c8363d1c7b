import type { Problem } from '@duskwatch/core';

/** What a command tells the shell. Documented in `--help`. */
export const EXIT = { done: 0, problems: 1, usage: 2, internal: 3 } as const;

export type Outcome =
  | { readonly exit: typeof EXIT.done }
  | { readonly exit: typeof EXIT.problems | typeof EXIT.usage; readonly problems: readonly Problem[] };

export const done: Outcome = { exit: EXIT.done };

/** The data is faulty; nothing was changed. */
export const faulty = (...problems: readonly Problem[]): Outcome => ({ exit: EXIT.problems, problems });

/** The command was called in a way that cannot be carried out. */
export const misused = (...problems: readonly Problem[]): Outcome => ({ exit: EXIT.usage, problems });

/** The problems of an option, as every command says them. */
export const optionProblem = (parameter: string, got: string, expected: string, fix: string): Problem => ({
  where: { parameter },
  got,
  expected,
  fix,
});
