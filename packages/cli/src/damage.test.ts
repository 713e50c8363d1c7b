import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { beforeEach, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();
let data: string;
let file: string;
let programs = 0;

beforeEach(async () => {
  data = duskwatch.path(`data-${programs++}`);
  file = duskwatch.path(`data-${programs - 1}`, 'duskwatch.sqlite');
  const folder = duskwatch.folder('small', smallFolder);
  expect((await duskwatch.run('import', folder, '--data', data)).exit).toBe(0);
});

const inPages = () => {
  const bytes = readFileSync(file);
  const size = bytes.readUInt16BE(16);
  writeFileSync(file, bytes.fill(0xa5, size * 2));
};
const cutShort = () => truncateSync(file, Math.floor(readFileSync(file).length / 2));
const atTheStart = () => writeFileSync(file, readFileSync(file).fill(0, 0, 100));

it.each([
  ['in its pages', inPages],
  ['by being cut short', cutShort],
  ['in its first bytes', atTheStart],
])('a database damaged %s is not served, not read and not changed; what to do is said in plain words', async (_, spoil) => {
  spoil();
  const before = readFileSync(file);
  for (const command of [['serve'], ['advise', '--on', '2026-07-15'], ['backup', duskwatch.path('never')]]) {
    const { exit, out, err } = await duskwatch.run(...command, '--data', data);
    expect({ exit, out }, `${command[0]}: ${err}`).toEqual({ exit: 1, out: '' });
    expect(err).toContain('duskwatch restore');
    expect(err).not.toMatch(/fault in Duskwatch|\n {4}at /);
  }
  expect(readFileSync(file)).toEqual(before);
});
