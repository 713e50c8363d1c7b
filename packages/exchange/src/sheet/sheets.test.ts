import { emptyProgram, type Program, type SheetMatch, type SheetProposal } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { utc, type WrittenCell, workbookOf, zipOf } from '../testing/workbook-of.ts';
import { answerMatch } from './answers.ts';
import { applyMatch } from './apply-match.ts';
import { proposeMatch } from './propose-match.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

type Matched = SheetProposal & { readonly match: SheetMatch };

const proposed = async (content: Uint8Array, existing?: Program): Promise<Matched> => {
  const result = await proposeMatch(content, 'sheet.csv', existing ? { existing } : {});
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.proposal as Matched;
};

/** As a person would answer for one farm with corn earworm traps. */
const answered = ({ match }: Matched, more: Partial<SheetMatch> = {}): SheetMatch => ({
  ...match,
  hungOn: '2025-06-20',
  constants: {
    insect: 'corn earworm',
    design: 'mesh-cone',
    crop: 'sweet corn',
    farm: 'Invented Farm',
    field: 'North',
    condition: 'fit',
  },
  ...more,
});

const counts = async (content: Uint8Array, match: SheetMatch, existing?: Program) => {
  const result = await applyMatch(content, match, existing, 'sheet.csv');
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.checks.map(({ trapId, checkedOn, targetCount }) => `${trapId} ${checkedOn} ${targetCount}`);
};

const problemsOf = async (content: Uint8Array, match: SheetMatch) => {
  const result = await applyMatch(content, match, emptyProgram(), 'sheet.csv');
  return result.ok ? [] : result.problems;
};

const EXPECTED = ['A 2025-07-01 3', 'A 2025-07-15 0', 'B 2025-07-15 12'];
const sorted = (list: readonly string[]) => [...list].sort();

const DAY_PER_COLUMN = bytes('Moth counts\nTrap,2025-07-01,2025-07-15\nA,3,0\nB,,12\nTotal,3,12\n');
const TRAP_PER_COLUMN = bytes('Date;A;B;Total\n1.7.2025;3;;3\n15.7.2025;0;12;12\n');
const CHECK_PER_ROW = bytes(
  'Date,Trap,Moths,Notes\n07/01/2025,A,3,"hot, dry"\n07/15/2025,A,0,\n07/15/2025,B,12,\n07/20/2025,B,,\n',
);

describe('a sheet as people keep it', () => {
  test.each([
    ['a day per column', { day: { in: 'row', row: 2 }, trap: { in: 'column', column: 'A' } }, DAY_PER_COLUMN],
    ['a trap per column', { day: { in: 'column', column: 'A' }, trap: { in: 'row', row: 1 } }, TRAP_PER_COLUMN],
    ['a check per row', { day: { in: 'column', column: 'A' }, trap: { in: 'column', column: 'B' } }, CHECK_PER_ROW],
  ])('%s is recognised and gives its counts; a blank cell is no check, never a zero', async (_, places, content) => {
    const match = await proposed(content);
    expect(match.match.tables[0]!.places).toMatchObject(places);
    expect(sorted(await counts(content, answered(match)))).toEqual(EXPECTED);
  });

  test('what the sheet does not tell is asked, not guessed', async () => {
    const match = await proposed(DAY_PER_COLUMN);
    expect(match.questions.map(({ id }) => id)).toEqual(['insect', 'design', 'field', 'crop', 'farm', 'hungOn', 'condition']);
    expect((await problemsOf(DAY_PER_COLUMN, match.match)).map(({ where }) => where.column)).toEqual(
      match.questions.map(({ id }) => id),
    );
  });

  test('the order of day and month is settled only when one order reads every date', async () => {
    expect((await proposed(TRAP_PER_COLUMN)).match.dateOrder).toBe('dmy');
    expect((await proposed(CHECK_PER_ROW)).match.dateOrder).toBe('mdy');
    const unclear = bytes('Date,A\n07/01/2025,3\n08/01/2025,4\n');
    const match = await proposed(unclear);
    expect(match.questions[0]).toMatchObject({
      id: 'dateOrder',
      choices: ['dmy', 'mdy'],
      about: '07/01/2025',
      suggestion: 'dmy',
    });
    expect(await problemsOf(unclear, answered(match))).toMatchObject([{ where: { column: 'dateOrder' }, got: 'no answer yet' }]);
    expect(await counts(unclear, answered(match, { dateOrder: 'dmy', hungOn: '2024-12-31' }))).toEqual(
      ['A 2025-01-07 3', 'A 2025-01-08 4'].sort(),
    );
  });

  test('days without a year take the year that was asked for', async () => {
    const content = bytes('Trap,1-Jul,Jul 15\nA,3,0\n');
    const match = await proposed(content);
    expect(match.questions[0]).toMatchObject({ id: 'year', evidence: [{ row: 1, column: 'B', text: '1-Jul' }, {}] });
    expect(await counts(content, answered(match, { year: 2025 }))).toEqual(['A 2025-07-01 3', 'A 2025-07-15 0']);
  });

  test('a word in place of a count is asked about; it can say why a trap was unfit, and stays in the note', async () => {
    const content = bytes('Trap,2025-07-01,2025-07-15\nA,3,down\nB,-,12\nC,gone,?\n');
    const match = await proposed(content);
    expect(match.match.words).toEqual({ down: null, '-': null, gone: null, '?': null });
    const result = await applyMatch(
      content,
      answered(match, { words: { down: 'down', '-': 'not-checked', gone: 'stolen', '?': 'unfit' } }),
    );
    expect(
      result.ok &&
        result.value.checks.map(({ trapId, targetCount, condition, unfitReason, note }) => [
          trapId,
          targetCount,
          condition,
          unfitReason,
          note,
        ]),
    ).toEqual([
      ['A', 3, 'fit', null, null],
      ['A', null, 'unfit', 'down', 'down'],
      ['B', 12, 'fit', null, null],
      ['C', null, 'unfit', 'stolen', 'gone'],
      ['C', null, 'unfit', null, '?'],
    ]);
  });

  test('traps that the program knows are used as they are, and nothing about them is asked', async () => {
    const match = await proposed(DAY_PER_COLUMN);
    const first = await applyMatch(DAY_PER_COLUMN, answered(match));
    if (!first.ok) throw new Error('refused');
    const existing = { ...emptyProgram(), fields: first.value.fields, traps: first.value.traps };
    const again = await proposed(DAY_PER_COLUMN, existing);
    expect(again.questions.map(({ id }) => id)).toEqual(['condition']);
    const constants = { ...again.match.constants, condition: 'fit' as const };
    expect(await applyMatch(DAY_PER_COLUMN, { ...again.match, constants }, existing)).toEqual({
      ok: true,
      value: { fields: [], traps: [], checks: first.value.checks },
    });
  });

  test('a new trap is made from the answers; hung on its first day, only when that was chosen', async () => {
    const match = answered(await proposed(DAY_PER_COLUMN), { hungOn: 'first-date' });
    const result = await applyMatch(DAY_PER_COLUMN, match);
    expect(
      result.ok &&
        result.value.traps.map(({ trapId, insect, design, hungOn, informs }) => [trapId, insect, design, hungOn, informs]),
    ).toEqual([
      ['A', 'helicoverpa-zea', 'mesh-cone', '2025-07-01', ['North']],
      ['B', 'helicoverpa-zea', 'mesh-cone', '2025-07-15', ['North']],
    ]);
    expect(result.ok && result.value.fields).toMatchObject([{ fieldId: 'North', crop: 'sweet-corn', farm: 'Invented Farm' }]);
  });

  test('several insects counted under one name have a trap each', async () => {
    const content = bytes('Site,Date,Species,Count\nGate,2025-07-01,Helicoverpa zea,3\nGate,2025-07-01,ostrinia-nubilalis,5\n');
    const match = answered(await proposed(content));
    expect(await counts(content, match)).toEqual(['Gate helicoverpa-zea 2025-07-01 3', 'Gate ostrinia-nubilalis 2025-07-01 5']);
  });

  test('faulty cells are named by row and column letter', async () => {
    const content = bytes('Trap,2025-07-01,2025-07-15,2025-06-01\nA,-3,2.5,1\n');
    const match = answered(await proposed(content), { figures: 'total' });
    expect(await problemsOf(content, match)).toMatchObject([
      { where: { file: 'sheet.csv', row: 2, column: 'B' }, got: '-3', expected: expect.stringContaining('whole number') },
      { where: { file: 'sheet.csv', row: 2, column: 'C' }, got: '2.5', expected: expect.stringContaining('whole number') },
    ]);
    const beforeHanging = bytes('Trap,2025-07-01,2025-06-01\nA,3,1\n');
    expect(await problemsOf(beforeHanging, match)).toMatchObject([
      { where: { row: 2, column: 'checked_on' }, got: '2025-06-01', expected: expect.stringContaining('2025-06-20') },
    ]);
  });

  test('an answer that does not fit, or that nothing asks for, is named', async () => {
    const { match, questions } = await proposed(DAY_PER_COLUMN);
    const answers = { insect: 'corn earwrom', hungOn: 'June', trap: 'A', condition: 'fit' };
    expect(answerMatch(match, questions, answers)).toMatchObject({
      ok: false,
      problems: [
        { where: { column: 'insect' }, got: 'corn earwrom', fix: 'Did you mean helicoverpa-zea?' },
        { where: { column: 'hungOn' }, got: 'June', expected: expect.stringContaining('YYYY-MM-DD') },
        { where: { column: 'trap' }, got: expect.stringContaining('does not ask') },
      ],
    });
  });

  test('counts per night become the moths of the nights since the visit before, and what was written stays', async () => {
    const content = bytes('Moths per trap per night\nDate,A\n7/1/2025,0.4\n7/15/2025,1.1\n');
    const match = await proposed(content);
    expect(match.questions[0]).toMatchObject({ id: 'figures', suggestion: 'per-night' });
    const read = await applyMatch(content, answered(match, { figures: 'per-night' }), undefined, 'sheet.csv');
    expect(read.ok && read.value.checks.map(({ targetCount, note }) => [targetCount, note])).toEqual([
      [Math.round(0.4 * 11), '0.4 per night'],
      [Math.round(1.1 * 14), '1.1 per night'],
    ]);
  });

  test('a figure with a word keeps both', async () => {
    const content = bytes('Trap,2025-07-01,2025-07-08\nA,12 (mixed),0*\n');
    const match = await proposed(content);
    const words = { '# (mixed)': 'count', '#*': 'doubtful' } as const;
    const read = await applyMatch(content, answered(match, { words }), undefined, 'sheet.csv');
    expect(read.ok && read.value.checks.map(({ targetCount, condition, note }) => [targetCount, condition, note])).toEqual([
      [12, 'fit', '12 (mixed)'],
      [0, 'doubtful', '0*'],
    ]);
  });

  test('a sheet without days is refused with what is expected', async () => {
    expect(await proposeMatch(bytes('a,b\n1,2\n'), 'x.csv')).toMatchObject({
      ok: false,
      problems: [{ where: { file: 'x.csv' }, got: 'a sheet in which no days with counts were found' }],
    });
  });
});

describe('a workbook', () => {
  const GOOD: WrittenCell[][] = [
    ['Trap', utc('2025-07-01'), utc('2025-07-15')],
    ['A', 3, { formula: 'B2-3', result: 0 }],
    ['B', null, { runs: ['1', '2'] }],
  ];

  test('real dates and the results of formulas are read', async () => {
    const content = workbookOf({ Counts: { rows: GOOD } });
    const match = await proposed(content);
    expect(match.questions.map(({ id }) => id)).not.toContain('dateOrder');
    expect(sorted(await counts(content, answered(match)))).toEqual(EXPECTED);
  });

  test('of several sheets those with counts are read, and the others are named', async () => {
    const content = workbookOf({ Readme: { rows: [['Counts of an invented season']] }, 'July 2025': { rows: GOOD } });
    const match = await proposed(content);
    expect(match.asideSheets).toEqual([{ sheet: 'Readme', why: 'nothing' }]);
    expect(sorted(await counts(content, answered(match)))).toEqual(EXPECTED);
    expect(await proposeMatch(content, 'counts.xlsx', { sheet: 'June' })).toMatchObject({
      ok: false,
      problems: [{ got: 'no sheet June; there are Readme, July 2025' }],
    });
  });

  test('error cells and formulas without a result are each named, where they stand among counts', async () => {
    const rows = [...GOOD, ['C', { error: '#REF!' }, { formula: 'B2' }]];
    const content = workbookOf({ Counts: { rows } });
    expect(await problemsOf(content, answered(await proposed(content)))).toEqual([
      { where: { file: 'sheet.csv', row: 4, column: 'B' }, got: 'the error #REF!', expected: 'a value', fix: expect.any(String) },
      {
        where: { file: 'sheet.csv', row: 4, column: 'C' },
        got: 'a formula without a result',
        expected: 'a value',
        fix: expect.any(String),
      },
    ]);
  });

  test('a workbook that would fill the memory is refused before it is unpacked', async () => {
    const result = await proposeMatch(zipOf({ 'xl/workbook.xml': '<workbook/>' }, 3e9), 'counts.xlsx');
    expect(result).toMatchObject({
      ok: false,
      problems: [{ where: { file: 'counts.xlsx' }, got: 'a workbook that unpacks to 3000 MB', expected: 'at most 256 MB' }],
    });
  });

  test('a zip file that is no workbook is refused', async () => {
    const result = await proposeMatch(new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0]), 'x.xlsx');
    expect(result).toMatchObject({ ok: false, problems: [{ expected: 'an XLSX workbook' }] });
  });
});

test('a sheet of 300,000 rows is read as a short one is', async () => {
  const day = (n: number) => new Date(Date.UTC(2015, 3, 1) + n * 86_400_000).toISOString().slice(0, 10);
  const rows = Array.from({ length: 300_000 }, (_, n) => `Site ${n % 80},${day(Math.floor(n / 80))},${(n * 7) % 31}`);
  const { reading } = await proposed(bytes(`Trap,Date,Count\n${rows.join('\n')}\n`));
  expect(reading).toMatchObject({ traps: 80, checks: 300_000, days: 3_750, from: '2015-04-01', to: '2025-07-06' });
});
