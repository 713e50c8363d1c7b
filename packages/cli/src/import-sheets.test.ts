/** Every untidy sheet that is kept with what it must become, through the command: read, and nothing imported. */
import type { SheetReading } from '@duskwatch/core';
import { openStore } from '@duskwatch/store';
import { expect, it } from 'vitest';
import { expected, files, folder } from '../../exchange/src/sheet/fixtures.testing.ts';
import { commandUnderTest } from './testing/command.ts';

const duskwatch = commandUnderTest();
/** So many at a time. */
const TOGETHER = 4;

it('says of each untidy sheet what it says in the page, and imports nothing', async () => {
  const data = duskwatch.path('sheets');
  expect((await duskwatch.run('import', duskwatch.folder('none', {}), '--data', data)).exit).toBe(1);
  const readings = new Map<string, SheetReading>();
  const left = [...files];
  const work = async () => {
    for (let file = left.pop(); file !== undefined; file = left.pop()) {
      const { exit, out, err } = await duskwatch.run('import', folder + file, '--propose', '--json', '--data', data);
      expect(exit, `${file}: ${err}`).toBe(0);
      readings.set(file, (JSON.parse(out) as { reading: SheetReading }).reading);
    }
  };
  await Promise.all(Array.from({ length: TOGETHER }, work));
  expect(Object.fromEntries(readings)).toEqual(expected);
  const store = await openStore(`${data}/duskwatch.sqlite`);
  try {
    expect((await store.counts()).revisions).toBe(0);
  } finally {
    await store.close();
  }
});
