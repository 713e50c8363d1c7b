import type { Problem } from '@duskwatch/core';

const DEFAULT_MAX_PROBLEMS = 1_000;

/** Problems of one file, listed up to a limit and counted beyond it. */
export class ProblemList {
  private readonly listed: Problem[] = [];
  private count = 0;
  readonly file: string;
  private readonly limit: number;

  constructor(file: string, limit = DEFAULT_MAX_PROBLEMS) {
    this.file = file;
    this.limit = limit;
  }

  get isEmpty(): boolean {
    return this.count === 0;
  }

  readonly add = (problem: Problem): void => {
    this.count += 1;
    if (this.listed.length < this.limit) this.listed.push(problem);
  };

  /** By row; the last entry says how many more there are, if any. */
  all(): Problem[] {
    const sorted = this.listed.toSorted((a, b) => (a.where.row ?? 0) - (b.where.row ?? 0));
    const more = this.count - this.listed.length;
    if (more === 0) return sorted;
    return [
      ...sorted,
      {
        where: { file: this.file },
        got: `${more.toLocaleString('en')} more problems in this file`,
        expected: `at most ${this.limit.toLocaleString('en')} to list`,
        fix: 'Mend those above first (many may have one cause), then try again.',
      },
    ];
  }
}
