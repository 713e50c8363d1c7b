import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkoutRoot } from './checkout.ts';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();

describe('duskwatch advise', () => {
  it('gives the verb and date for each field and insect of a folder, with all that they rest on', async () => {
    const { exit, out, err } = await duskwatch.run(
      'advise',
      duskwatch.folder('good', smallFolder),
      '--on',
      '2026-07-15',
      '--json',
    );
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    const [advice, ...others] = JSON.parse(out);
    expect(others).toEqual([]);
    expect(Object.keys(advice).sort()).toEqual(
      [
        'field',
        'insect',
        'verb',
        'by',
        'dueSince',
        'rate',
        'interval',
        'intervalDays',
        'probabilityAbove',
        'because',
        'cautions',
        'confidence',
        'rule',
        'source',
      ].sort(),
    );
    // 30 moths in six nights are 5 a night; the mesh-cone table gives four days for 1 to 13 a night (UConn, reviewed 2012).
    expect(advice).toMatchObject({ field: 'north', insect: 'helicoverpa-zea', verb: 'decide', rate: 5, intervalDays: 4 });
    expect(advice.interval[0]).toBeLessThan(5);
    expect(advice.interval[1]).toBeGreaterThan(5);
    expect(advice.because.length).toBeGreaterThan(0);
  });

  it('is a table for people otherwise', async () => {
    const { exit, out } = await duskwatch.run('advise', duskwatch.folder('table', smallFolder), '--on', '2026-07-15');
    expect(exit).toBe(0);
    expect(out).toMatch(/north +corn earworm.* +Decide +\d+ days late, since /);
  });

  it('knows nothing of what was recorded after the day it stands on', async () => {
    const { out } = await duskwatch.run('advise', duskwatch.folder('earlier', smallFolder), '--on', '2026-07-09', '--json');
    expect(JSON.parse(out)[0].rate).toBe(2);
  });

  it('lists every problem of a faulty folder, and gives no advice on it', async () => {
    const folder = duskwatch.folder('faulty', {
      ...smallFolder,
      'checks.csv':
        'trap_id,checked_on,target_count,condition\nT1,2026-06-08,3,fit\nT1,2026-07-14,2.5,fit\nT9,2026-07-14,1,fit\n',
    });
    const { exit, out, err } = await duskwatch.run('advise', folder, '--on', '2026-07-15', '--json');
    expect({ exit, out }).toEqual({ exit: 1, out: '' });
    const problems = JSON.parse(err) as { where: { file: string; row: number; column: string }; fix: string }[];
    expect(problems.map(({ where }) => `${where.file} ${where.row} ${where.column}`).sort()).toEqual([
      'checks.csv 2 checked_on',
      'checks.csv 3 target_count',
      'checks.csv 4 trap_id',
    ]);

    const forPeople = await duskwatch.run('advise', folder, '--on', '2026-07-15');
    expect({ exit: forPeople.exit, out: forPeople.out }).toEqual({ exit: 1, out: '' });
    expect(forPeople.err).toContain('checks.csv, row 3, column target_count: got 2.5');
  });

  it('stands on real weather: black cutworm after an intense capture, Seattle 2015', async () => {
    const { exit, out } = await duskwatch.run(
      'advise',
      duskwatch.folder('seattle', cutwormFolder()),
      '--on',
      '2015-06-12',
      '--json',
    );
    expect(exit).toBe(0);
    const [advice] = JSON.parse(out);
    const cutting = advice.because.find((each: { event?: string }) => each.event === 'first-cutting');
    // Simple average above 50 °F from the biofix, straight from the station's figures.
    const expected = seattle()
      .filter(({ date }) => date >= '2015-05-12' && date <= '2015-06-12')
      .reduce((sum, { tminC, tmaxC }) => sum + Math.max(0, (tminC + tmaxC) / 2 - 10) * 1.8, 0);
    expect(expected).toBeGreaterThan(250);
    expect(cutting.heatSoFar).toBeCloseTo(expected, 6);
    expect(advice).toMatchObject({ insect: 'agrotis-ipsilon', verb: 'scout' });
  });
});

/** Daily extremes of NOAA at Seattle 2012–2015, as npm's vega-datasets carries them. */
function seattle(): { date: string; tminC: number; tmaxC: number }[] {
  const file = join(checkoutRoot, 'node_modules/vega-datasets/data/seattle-weather.csv');
  const [, ...lines] = readFileSync(file, 'utf8').trim().split('\n');
  return lines.map((line) => {
    const [date, , tmaxC, tminC] = line.split(',');
    return { date: date!, tminC: Number(tminC), tmaxC: Number(tmaxC) };
  });
}

function cutwormFolder() {
  return {
    'fields.csv': 'field_id,farm,name,crop,planted_on\nwest,Hill farm,West piece,sweet-corn,2015-05-01\n',
    'stages.csv': 'field_id,observed_on,stage\nwest,2015-06-08,whorl\n',
    'traps.csv': 'trap_id,station,insect,design,hung_on,informs\nT1,S1,agrotis-ipsilon,bucket,2015-05-01,west\n',
    'checks.csv': 'trap_id,checked_on,target_count,condition\nT1,2015-05-10,1,fit\nT1,2015-05-12,11,fit\nT1,2015-06-10,8,fit\n',
    'weather.csv': `source_id,date,tmin_c,tmax_c\n${seattle()
      .map(({ date, tminC, tmaxC }) => `seattle,${date},${tminC},${tmaxC}`)
      .join('\n')}\n`,
  };
}
