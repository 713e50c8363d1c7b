import type { Problem } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { readProgramFolder } from '../folder/read-folder.ts';
import { folderOf } from './folder-of.ts';

export type Files = Parameters<typeof folderOf>[0];

export const problemsOf = async (changes: Files): Promise<readonly Problem[]> => {
  const result = await readProgramFolder(await folderOf(changes));
  return result.ok ? [] : result.problems;
};

export const at = (file: string, row: number | undefined, column: string | undefined) => ({
  file,
  ...(row !== undefined && { row }),
  ...(column !== undefined && { column }),
});

/** Where the fault is, and words that its got, expected and fix must hold. */
export type Fault = [name: string, changes: Files, where: object, got: string, expected: string, fix: string];

/** Each fault gives one problem and no more. */
export function testFaults(faults: readonly Fault[]): void {
  test.each(faults)('%s', async (_, changes, where, got, expected, fix) => {
    const problems = await problemsOf(changes);
    expect(problems).toHaveLength(1);
    expect(problems[0]!.where).toEqual(where);
    expect(problems[0]!.got).toContain(got);
    expect(problems[0]!.expected).toContain(expected);
    expect(problems[0]!.fix).toContain(fix);
  });
}
