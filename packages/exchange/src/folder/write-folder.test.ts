import { mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Program } from '@duskwatch/core';
import { describe, expect, test, vi } from 'vitest';
import { folderOf, SOUND_FILES } from '../testing/folder-of.ts';
import { readProgramFolder } from './read-folder.ts';
import { writeProgramFolder } from './write-folder.ts';

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof import('node:fs/promises')>();
  return { ...real, rename: vi.fn(real.rename) };
});
const { rename: realRename } = await vi.importActual<typeof import('node:fs/promises')>('node:fs/promises');

async function soundProgram(): Promise<Program> {
  const read = await readProgramFolder(await folderOf());
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { ...read.value, settings: { name: 'Invented Valley Co-operative', invented: true, pinnedOn: '2025-07-16' } };
}

describe('writing over a folder', () => {
  test('leaves files that are not ours, takes away tables that have no rows any more, and leaves nothing of its own work', async () => {
    const dir = await folderOf({ 'letter.txt': 'keep me' });
    const program = await soundProgram();
    await writeProgramFolder({ ...program, stages: [], rules: [] }, dir);
    const expected = [
      'answers',
      'checks',
      'decisions',
      'fields',
      'lures',
      'plans',
      'prices',
      'samples',
      'seasons',
      'skips',
      'stock',
      'traps',
      'treatments',
      'weather',
    ].map((name) => `${name}.csv`);
    expect((await readdir(dir)).sort()).toEqual([...expected, 'datapackage.json', 'letter.txt'].sort());
    expect(await readFile(join(dir, 'letter.txt'), 'utf8')).toBe('keep me');
    const read = await readProgramFolder(dir);
    expect(read.ok && read.value).toEqual({ ...program, stages: [], rules: [] });
  });

  test('that cannot be done leaves everything as it was', async () => {
    const dir = await folderOf({ 'checks.csv': null });
    await mkdir(join(dir, 'checks.csv'));
    await writeFile(join(dir, 'checks.csv', 'in-the-way'), 'not ours');
    await expect(writeProgramFolder({ ...(await soundProgram()), fields: [], weather: [] }, dir)).rejects.toThrow('in the way');
    for (const [file, text] of Object.entries(SOUND_FILES)) {
      if (file !== 'checks.csv') expect(await readFile(join(dir, file), 'utf8')).toBe(text);
    }
    expect(await readFile(join(dir, 'checks.csv', 'in-the-way'), 'utf8')).toBe('not ours');
    expect((await readdir(dir)).sort()).toEqual(Object.keys(SOUND_FILES).sort());
  });

  test('that fails halfway puts back what was there', async () => {
    const dir = await folderOf({ 'stages.csv': null });
    vi.mocked(rename)
      .mockImplementationOnce(realRename)
      .mockImplementationOnce(realRename)
      .mockRejectedValueOnce(new Error('disk gone'));
    await expect(writeProgramFolder({ ...(await soundProgram()), traps: [] }, dir)).rejects.toThrow('disk gone');
    const { 'stages.csv': _, ...expected } = SOUND_FILES;
    expect((await readdir(dir)).sort()).toEqual(Object.keys(expected).sort());
    for (const [file, text] of Object.entries(expected)) expect(await readFile(join(dir, file), 'utf8')).toBe(text);
  });
});
