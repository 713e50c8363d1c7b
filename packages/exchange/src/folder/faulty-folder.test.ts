import { truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderOf, SOUND_FILES, spoilt } from '../testing/folder-of.ts';
import { at, type Fault, problemsOf, testFaults } from '../testing/one-fault.ts';
import { readProgramFolder } from './read-folder.ts';

const faults: Fault[] = [
  [
    'an empty file',
    { 'lures.csv': '\n\n' },
    at('lures.csv', undefined, undefined),
    'an empty file',
    'trap_id, placed_on, life_days',
    'or remove the file',
  ],
  [
    'a required file that is missing',
    { 'checks.csv': null, 'check.csv': '' },
    at('checks.csv', undefined, undefined),
    'no such file',
    'fields.csv, traps.csv and checks.csv',
    'There is check.csv: rename it checks.csv',
  ],
  [
    'text in UTF-16',
    { 'checks.csv': Buffer.from(`\uFEFF${SOUND_FILES['checks.csv']}`, 'utf16le') },
    at('checks.csv', undefined, undefined),
    'UTF-16',
    'UTF-8',
    'CSV UTF-8',
  ],
  [
    'text in Latin-1',
    { 'checks.csv': Buffer.from(SOUND_FILES['checks.csv']!.replace('wind', 'été'), 'latin1') },
    at('checks.csv', 3, undefined),
    'Latin-1',
    'UTF-8',
    'CSV UTF-8',
  ],
  [
    'a workbook renamed to .csv',
    { 'checks.csv': Buffer.from([0x50, 0x4b, 3, 4, 20, 0]) },
    at('checks.csv', undefined, undefined),
    'XLSX',
    'plain text',
    'Save the sheet as CSV',
  ],
  [
    'a descriptor that is not JSON',
    { 'datapackage.json': '{ "title": ' },
    at('datapackage.json', undefined, undefined),
    'JSON',
    'valid JSON',
    'optional',
  ],
  [
    'a pinned day in another form',
    { 'datapackage.json': '{ "title": "A", "duskwatch": { "pinnedOn": "July" } }' },
    at('datapackage.json', undefined, 'duskwatch.pinnedOn'),
    'July',
    'YYYY-MM-DD',
    'Correct',
  ],
];

describe('a file that cannot be read is one problem, with what it is and what to do', () => testFaults(faults));

test('a sound folder has no problem', async () => {
  expect(await problemsOf({})).toEqual([]);
});

describe('a folder with many faults', () => {
  const manyFaults = {
    ...spoilt('checks.csv', 'T1,2025-07-01,3', 'T9,07/12/2025,-3'),
    ...spoilt('weather.csv', '12.5,25', '25,twelve'),
    ...spoilt('traps.csv', '2025-06-01,,', 'June,,'),
  };

  test('lists all of them by file and row, and does not blame rows for a trap whose own row is faulty', async () => {
    const problems = await problemsOf(manyFaults);
    expect(problems.map(({ where }) => [where.file, where.row, where.column])).toEqual([
      ['traps.csv', 2, 'hung_on'],
      ['checks.csv', 2, 'checked_on'],
      ['checks.csv', 2, 'target_count'],
      ['weather.csv', 2, 'tmax_c'],
    ]);
  });

  test('imports cleanly once it is corrected', async () => {
    const dir = await folderOf(manyFaults);
    expect((await readProgramFolder(dir)).ok).toBe(false);
    for (const [file, text] of Object.entries(SOUND_FILES)) await writeFile(join(dir, file), text);
    const read = await readProgramFolder(dir);
    expect(read.ok && [read.value.checks.length, read.value.traps[0]!.informs]).toEqual([3, ['north', 'south']]);
  });

  test('lists a thousand problems of a file and counts the rest', async () => {
    const rows = Array.from({ length: 2_500 }, (_, i) => `T1,2025-07-01,-${i + 1},,fit,,\n`).join('');
    const problems = await problemsOf({
      'checks.csv': `trap_id,checked_on,target_count,other_count,condition,emptied,note\n${rows}`,
    });
    expect(problems).toHaveLength(1_001);
    expect(problems.at(-1)).toMatchObject({ where: { file: 'checks.csv' }, got: '1,500 more problems in this file' });
  });

  test('a 200 MB file is refused by its size, before it is read', async () => {
    const dir = await folderOf();
    await truncate(join(dir, 'checks.csv'), 200 * 1024 * 1024);
    const result = await readProgramFolder(dir);
    expect(result).toEqual({
      ok: false,
      problems: [
        {
          where: { file: 'checks.csv' },
          got: 'a file of 200 MB',
          expected: 'at most 64 MB',
          fix: 'Split it by season: parts are imported one after another.',
        },
      ],
    });
  });
});
