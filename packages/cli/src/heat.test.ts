import { describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';

const duskwatch = commandUnderTest();

const NIGHTS = 'date,tmin_f,tmax_f\n2026-05-01,40,60\n2026-05-02,52,70\n2026-05-03,45,65\n';
const rows = (out: string) => JSON.parse(out) as { date: string; degreeDays: number; total: number; bridged?: boolean }[];

describe('duskwatch heat', () => {
  it('sums days by hand: 10/π where the mean is the threshold, the mean above it where the night never falls below', async () => {
    const file = `${duskwatch.folder('hand', { 'w.csv': NIGHTS })}/w.csv`;
    const { exit, out, err } = await duskwatch.run(
      'heat',
      file,
      '--method',
      'single-sine',
      '--cutoff',
      'horizontal',
      '--lower',
      '50F',
      '--upper',
      '88F',
      '--from',
      '2026-05-01',
      '--to',
      '2026-05-02',
      '--json',
    );
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    const [first, second, ...rest] = rows(out);
    expect(rest).toEqual([]);
    expect(Object.keys(first!)).toEqual(['date', 'degreeDays', 'total']);
    expect(first).toMatchObject({ date: '2026-05-01', degreeDays: expect.closeTo(10 / Math.PI, 9) });
    expect(second).toMatchObject({
      date: '2026-05-02',
      degreeDays: expect.closeTo(11, 9),
      total: expect.closeTo(10 / Math.PI + 11, 9),
    });
  });

  it('answers in the unit of the thresholds: 1 °C·d is 1.8 °F·d', async () => {
    const file = `${duskwatch.folder('units', { 'w.csv': NIGHTS })}/w.csv`;
    const fahrenheit = rows((await duskwatch.run('heat', file, '--method', 'single-triangle', '--lower', '50F', '--json')).out);
    const celsius = rows((await duskwatch.run('heat', file, '--method', 'single-triangle', '--lower', '10C', '--json')).out);
    expect(fahrenheit[0]!.degreeDays).toBeCloseTo(2.5, 9);
    expect(celsius).toHaveLength(3);
    celsius.forEach((row, at) => {
      expect(row.total * 1.8).toBeCloseTo(fahrenheit[at]!.total, 9);
    });
  });

  it('bridges a short gap and says so; refuses to sum over a long one, with its dates', async () => {
    const short = duskwatch.folder('short', { 'w.csv': 'date,tmin_c,tmax_c\n2026-05-01,12,20\n2026-05-03,14,22\n' });
    const bridged = await duskwatch.run('heat', `${short}/w.csv`, '--method', 'simple-average', '--lower', '10C', '--json');
    expect(rows(bridged.out)[1]).toEqual({ date: '2026-05-02', degreeDays: 7, total: 13, bridged: true });
    expect(bridged.err).toContain('1 missing day bridged');

    const long = duskwatch.folder('long', { 'w.csv': 'date,tmin_c,tmax_c\n2026-05-01,12,20\n2026-05-20,14,22\n' });
    const refused = await duskwatch.run('heat', `${long}/w.csv`, '--method', 'simple-average', '--lower', '10C', '--json');
    expect({ exit: refused.exit, out: refused.out }).toEqual({ exit: 1, out: '' });
    expect(JSON.parse(refused.err)[0].got).toContain('2026-05-02 to 2026-05-19');
  });

  it('wants to know which source, where a file holds several', async () => {
    const file = `${duskwatch.folder('two', {
      'weather.csv': 'source_id,date,tmin_c,tmax_c\nhill,2026-05-01,10,20\nvale,2026-05-01,14,20\n',
    })}/weather.csv`;
    const heat = ['heat', file, '--method', 'simple-average', '--lower', '10C', '--json'];
    const unsaid = await duskwatch.run(...heat);
    expect(unsaid.exit).toBe(1);
    expect(JSON.parse(unsaid.err)[0]).toMatchObject({
      where: { parameter: '--source' },
      expected: expect.stringContaining('hill, vale'),
    });
    expect(rows((await duskwatch.run(...heat, '--source', 'vale')).out)[0]!.degreeDays).toBe(7);
  });

  it('reads the daily summaries of a NOAA station, once it knows their units', async () => {
    const file = `${duskwatch.folder('noaa', {
      'station.csv':
        'STATION,NAME,DATE,TMAX,TMIN,PRCP\nUSW00000001,Somewhere,2026-05-01,60,40,0\nUSW00000001,Somewhere,2026-05-02,70,52,0\n',
    })}/station.csv`;
    const heat = ['heat', file, '--method', 'single-sine', '--lower', '50F', '--json'];
    expect((await duskwatch.run(...heat)).exit).toBe(1);
    const { exit, out } = await duskwatch.run(...heat, '--units', 'standard');
    expect(exit).toBe(0);
    expect(rows(out).map((row) => row.degreeDays)).toEqual([expect.closeTo(10 / Math.PI, 9), expect.closeTo(11, 9)]);
  });

  it.each([
    ['thresholds in two units', ['--method', 'single-sine', '--lower', '50F', '--upper', '31C'], '--upper'],
    ['a threshold without a unit', ['--method', 'single-sine', '--lower', '50'], '--lower'],
    ['an upper threshold below the lower', ['--method', 'single-sine', '--lower', '50F', '--upper', '40F'], '--upper'],
    ['an unknown method', ['--method', 'cosine', '--lower', '50F'], '--method'],
    ['an unknown cutoff', ['--method', 'single-sine', '--cutoff', 'diagonal', '--lower', '50F'], '--cutoff'],
  ])('refuses %s as wrong usage', async (_, options, parameter) => {
    const { exit, out, err } = await duskwatch.run('heat', 'w.csv', ...options, '--json');
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(JSON.parse(err)[0].where).toEqual({ parameter });
  });
});
