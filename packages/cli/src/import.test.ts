import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();

const counts = (out: string) => JSON.parse(out) as { added: number; changed: number; unchanged: number };
const importInto = async (data: string, path: string) => {
  const ran = await duskwatch.run('import', path, '--data', duskwatch.path(data), '--json');
  return { ...ran, counts: ran.exit === 0 ? counts(ran.out) : null };
};

describe('duskwatch import', () => {
  it('adds nothing when the same folder comes twice', async () => {
    const folder = duskwatch.folder('twice', smallFolder);
    const first = await importInto('twice-data', folder);
    const second = await importInto('twice-data', folder);
    expect(first.counts!.added).toBeGreaterThanOrEqual(6);
    expect(second.counts).toMatchObject({ added: 0, changed: 0, unchanged: 6 });
  });

  it('half-imports nothing from a faulty folder, and takes it once it is corrected', async () => {
    const faulty = duskwatch.folder('mended', {
      ...smallFolder,
      'checks.csv': 'trap_id,checked_on,target_count,condition\nT1,2026-07-08,minus,fit\n',
    });
    const refused = await importInto('mended-data', faulty);
    expect(refused).toMatchObject({ exit: 1, out: '' });
    expect(JSON.parse(refused.err)[0].where).toMatchObject({ file: 'checks.csv', row: 2, column: 'target_count' });

    const advised = await duskwatch.run('advise', '--on', '2026-07-15', '--data', duskwatch.path('mended-data'), '--json');
    expect(JSON.parse(advised.out)).toEqual([]);

    const corrected = await importInto('mended-data', duskwatch.folder('mended', smallFolder));
    expect(corrected.counts).toMatchObject({ changed: 0, unchanged: 0 });
  });

  it('takes one table, and holds it against the traps the database knows', async () => {
    await importInto('table-data', duskwatch.folder('table', smallFolder));
    const header = 'trap_id,checked_on,target_count,condition';
    const good = duskwatch.folder('tables', { 'new-checks.csv': `${header}\nT1,2026-07-18,12,fit\n` });
    expect((await importInto('table-data', `${good}/new-checks.csv`)).counts).toEqual({ added: 1, changed: 0, unchanged: 0 });

    const bad = duskwatch.folder('tables', { 'bad-checks.csv': `${header}\nT1,2026-06-18,12,fit\nT8,2026-07-19,1,fit\n` });
    const refused = await importInto('table-data', `${bad}/bad-checks.csv`);
    expect(refused.exit).toBe(1);
    expect(JSON.parse(refused.err).map((problem: { where: object }) => problem.where)).toEqual(
      expect.arrayContaining([
        { file: 'bad-checks.csv', row: 2, column: 'checked_on' },
        { file: 'bad-checks.csv', row: 3, column: 'trap_id' },
      ]),
    );
  });

  it('reads a wide sheet once its questions are answered, and asks them before', async () => {
    const folder = duskwatch.folder('wide', { 'counts.csv': 'Trap,2026-07-08,2026-07-14\nA,14,30\nB,0,2\n' });
    const sheet = `${folder}/counts.csv`;
    const asked = await importInto('wide-data', sheet);
    expect(asked.exit).toBe(1);
    expect(JSON.parse(asked.err)[0].fix).toContain('--propose');

    const data = ['--data', duskwatch.path('wide-data')];
    const proposed = await duskwatch.run('import', sheet, '--propose', '--json', ...data);
    expect(proposed.exit).toBe(0);
    const { reading, questions, match } = JSON.parse(proposed.out);
    expect(reading).toEqual({
      kind: 'counts',
      traps: 2,
      checks: 4,
      insects: [],
      from: '2026-07-08',
      to: '2026-07-14',
      words: [],
      days: 2,
    });
    expect(questions[0]).toMatchObject({
      id: 'insect',
      question: expect.any(String),
      evidence: '14 in B2; 30 in C2; 0 in B3; and 1 more',
    });
    expect(match.tables).toHaveLength(1);

    const answers = [
      'insect=helicoverpa-zea',
      'design=mesh-cone',
      'crop=sweet-corn',
      'farm=Hill farm',
      'field=each-trap',
      'condition=fit',
      'hungOn=2026-07-01',
    ].flatMap((answer) => ['--answer', answer]);
    const kept = duskwatch.path('wide', 'match.json');
    expect((await duskwatch.run('import', sheet, ...answers, '--out', kept, ...data)).exit).toBe(0);
    // As PowerShell keeps what a command prints.
    writeFileSync(kept, `\uFEFF${readFileSync(kept, 'utf8')}`, 'utf16le');
    const taken = await duskwatch.run('import', sheet, '--match', kept, ...data, '--json');
    expect(taken.err).toBe('');
    expect(counts(taken.out).added).toBeGreaterThanOrEqual(2 + 2 + 4);

    const advised = await duskwatch.run('advise', '--on', '2026-07-15', '--data', duskwatch.path('wide-data'), '--json');
    expect(JSON.parse(advised.out).map((each: { rate: number }) => each.rate)).toContain(5);
  });

  it('says what a folder and a table of weather hold, and imports nothing', async () => {
    const propose = async (path: string) => {
      const { out } = await duskwatch.run('import', path, '--propose', '--json', '--data', duskwatch.path('nothing-data'));
      return JSON.parse(out).reading;
    };
    expect(await propose(duskwatch.folder('looked-at', smallFolder))).toMatchObject({
      kind: 'folder',
      traps: 1,
      insects: ['helicoverpa-zea'],
    });
    const weather = duskwatch.folder('weather-us', {
      'log.csv': 'Date,High F,Low F,Rain in\n7/1/2025,88,61,0\n7/2/2025,90,63,T\n',
    });
    expect(await propose(`${weather}/log.csv`)).toMatchObject({
      kind: 'weather',
      traps: 0,
      checks: 0,
      days: 2,
      from: '2025-07-01',
    });
    const advised = await duskwatch.run('advise', '--on', '2026-07-15', '--data', duskwatch.path('nothing-data'), '--json');
    expect(JSON.parse(advised.out)).toEqual([]);
  });

  it('names a problem that repeats itself once, and says in how many more rows it is', async () => {
    const rows = Array.from({ length: 54 }, (_, index) => `T1,2026-07-${String((index % 28) + 1).padStart(2, '0')},many,fit`);
    const folder = duskwatch.folder('repeats', {
      'checks.csv': `trap_id,checked_on,target_count,condition\n${rows.join('\n')}\n`,
    });
    await importInto('repeats-data', duskwatch.folder('repeats-program', smallFolder));
    const { err } = await duskwatch.run('import', `${folder}/checks.csv`, '--data', duskwatch.path('repeats-data'));
    expect(err).toContain('the same in 53 more rows');
    expect(err.match(/got many/g)).toHaveLength(1);
  });

  it('takes the weather of a NOAA station', async () => {
    const folder = duskwatch.folder('station', {
      'station.csv': 'STATION,DATE,TMAX,TMIN,PRCP\nUSW00000001,2026-05-01,21.5,10.5,0\nUSW00000001,2026-05-02,,9.5,1.2\n',
    });
    expect((await importInto('station-data', `${folder}/station.csv`)).counts).toMatchObject({ added: 2 });
  });

  it('says what is wrong with a path that leads nowhere', async () => {
    const { exit, err } = await importInto('nowhere-data', duskwatch.path('nowhere'));
    expect(exit).toBe(1);
    expect(JSON.parse(err)[0]).toMatchObject({ got: 'no such file' });
  });

  it('refuses the sheet with typing errors that comes with the demo, with the row of each', async () => {
    const data = duskwatch.path('typed-data');
    const sheet = duskwatch.path('typed.csv');
    expect((await duskwatch.run('demo', '--data', data)).exit).toBe(0);
    expect((await duskwatch.run('demo', '--typed-sheet', sheet)).exit).toBe(0);
    const refused = await importInto('typed-data', sheet);
    expect(refused.exit).toBe(1);
    const columns = JSON.parse(refused.err).map((problem: { where: { column: string } }) => problem.where.column);
    expect(columns.sort()).toEqual(['checked_on', 'target_count']);
  });
});

describe('duskwatch import into the demo', () => {
  it('is refused with what to do, and the demo stays as it was', async () => {
    const data = ['--data', duskwatch.path('demo-data')];
    expect((await duskwatch.run('demo', ...data)).exit).toBe(0);
    const before = (await duskwatch.run('advise', '--on', '2026-07-15', '--json', ...data)).out;
    const sheet = duskwatch.folder('real', { 'fields.csv': 'field_id,farm,name,crop\nreal-1,Real farm,Real field,sweet-corn\n' });
    const refused = await duskwatch.run('import', `${sheet}/fields.csv`, ...data);
    expect(refused.exit).toBe(1);
    expect(refused.err).toContain('invented and real records are never mixed');
    expect(refused.err).toContain(`--data ${JSON.stringify(duskwatch.path('demo-data', 'own'))}`);
    expect((await duskwatch.run('advise', '--on', '2026-07-15', '--json', ...data)).out).toBe(before);
  });
});

describe('duskwatch export', () => {
  it('writes a folder that imports into an empty database as the same program', async () => {
    await importInto('source-data', duskwatch.folder('source', smallFolder));
    const exported = await duskwatch.run('export', duskwatch.path('exported'), '--data', duskwatch.path('source-data'));
    expect(exported.exit).toBe(0);
    expect(existsSync(duskwatch.path('exported', 'datapackage.json'))).toBe(true);

    await importInto('copy-data', duskwatch.path('exported'));
    const again = await duskwatch.run('export', duskwatch.path('again'), '--data', duskwatch.path('copy-data'));
    expect(again.exit).toBe(0);
    for (const file of [...Object.keys(smallFolder), 'datapackage.json']) {
      expect(readFileSync(duskwatch.path('again', file), 'utf8'), file).toBe(
        readFileSync(duskwatch.path('exported', file), 'utf8'),
      );
    }
  });

  it('overwrites nothing', async () => {
    const taken = duskwatch.folder('taken', { 'notes.txt': 'mine' });
    const { exit, err } = await duskwatch.run('export', taken, '--data', duskwatch.path('taken-data'));
    expect(exit).toBe(2);
    expect(err).toContain('a new or empty folder');
  });
});

describe('duskwatch demo', () => {
  it('does not mix the invented demo into a program', async () => {
    await importInto('own-data', duskwatch.folder('own', smallFolder));
    const { exit, err } = await duskwatch.run('demo', '--data', duskwatch.path('own-data'));
    expect(exit).toBe(1);
    expect(err).toContain('holds a program already');
  });
});
