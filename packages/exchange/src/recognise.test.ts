import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { recognise } from './recognise.ts';
import { folderOf, SOUND_FILES } from './testing/folder-of.ts';
import { workbookOf } from './testing/workbook-of.ts';

const natureOf = async (file: string, content: string | Uint8Array) => {
  const dir = await folderOf();
  await writeFile(join(dir, file), content);
  const result = await recognise(join(dir, file));
  if (!result.ok) return result.problems[0]!.got;
  return 'kind' in result.value ? `${result.value.is} ${result.value.kind}` : result.value.is;
};

test('a folder that holds a table of ours is a program folder, even a faulty one', async () => {
  const dir = await folderOf({ 'checks.csv': null });
  expect(await recognise(dir)).toEqual({ ok: true, value: { is: 'program-folder', dir } });
});

test.each(Object.entries(SOUND_FILES))('%s is known by its header under any name', async (file, text) => {
  expect(await natureOf('export.csv', text.replaceAll(',', ';'))).toBe(`table ${file.replace('.csv', '')}`);
});

test.each([
  ['NOAA daily summaries', 'w.csv', '"STATION","DATE","TMAX","TMIN"\n"S","2025-07-01","78","55"\n', 'noaa-daily'],
  ['counts with a day per column', 'c.csv', 'Trap,2025-07-01,2025-07-08\nA,3,4\n', 'sheet'],
  ['weather in °F', 'w.csv', 'source_id,date,tmin_f,tmax_f\nS,2025-07-01,55,78\n', 'table weather'],
  ['normals in °F', 'n.csv', 'source_id,month,tmin_f,tmax_f\nS,7,59,86\n', 'table normals'],
  ['something else', 'x.csv', 'a,b\n1,2\n', 'a sheet in which no days with counts were found'],
])('%s', async (_, file, text, nature) => {
  expect(await natureOf(file, text)).toBe(nature);
});

test('a workbook of counts, whatever its name says', async () => {
  const rows = [
    ['Date', 'A'],
    ['2025-07-01', 3],
  ];
  const content = workbookOf({ Counts: { rows } });
  expect(await natureOf('counts.csv', content)).toBe('sheet');
});

test('a path to nothing is refused', async () => {
  expect(await recognise('/no/such/file.csv')).toMatchObject({ ok: false, problems: [{ got: 'no such file' }] });
});
