import { emptyProgram, type Program, type SheetMatch } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { utc, type WrittenCell, workbookOf, zipOf } from '../testing/workbook-of.ts';
import { applyMatch } from './apply-match.ts';
import { proposeMatch } from './propose-match.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

const proposed = async (content: Uint8Array, existing?: Program): Promise<SheetMatch> => {
  const result = await proposeMatch(content, 'sheet.csv', existing ? { existing } : {});
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

/** As a person would answer for one farm with corn earworm traps. */
const answered = (match: SheetMatch, more: Partial<SheetMatch> = {}): SheetMatch => ({
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
    ['a day per column', 'day-per-column', DAY_PER_COLUMN],
    ['a trap per column', 'trap-per-column', TRAP_PER_COLUMN],
    ['a check per row', 'check-per-row', CHECK_PER_ROW],
  ])('%s is recognised and gives its counts; a blank cell is no check, never a zero', async (_, layout, content) => {
    const match = await proposed(content);
    expect(match.layout).toBe(layout);
    expect(sorted(await counts(content, answered(match)))).toEqual(EXPECTED);
  });

  test('what the sheet does not tell is asked, not guessed', async () => {
    const match = await proposed(DAY_PER_COLUMN);
    expect(match.questions.map(({ about }) => about)).toEqual([
      'constants.condition',
      'constants.insect',
      'constants.design',
      'constants.field',
      'constants.crop',
      'constants.farm',
      'hungOn',
    ]);
    expect((await problemsOf(DAY_PER_COLUMN, match)).map(({ where }) => where.column)).toEqual(
      match.questions.map(({ about }) => about),
    );
  });

  test('the order of day and month is settled only when one order reads every date', async () => {
    expect((await proposed(TRAP_PER_COLUMN)).dateOrder).toBe('dmy');
    expect((await proposed(CHECK_PER_ROW)).dateOrder).toBe('mdy');
    const unclear = bytes('Date,A\n07/01/2025,3\n08/02/2025,4\n');
    const match = await proposed(unclear);
    expect(match.questions[0]).toMatchObject({ about: 'dateOrder', choices: ['dmy', 'mdy'] });
    expect(await problemsOf(unclear, answered(match))).toMatchObject([{ where: { column: 'dateOrder' }, got: 'no answer yet' }]);
    expect(await counts(unclear, answered(match, { dateOrder: 'dmy', hungOn: '2024-12-31' }))).toEqual(
      ['A 2025-01-07 3', 'A 2025-02-08 4'].sort(),
    );
  });

  test('days without a year take the year that was asked for', async () => {
    const content = bytes('Trap,1-Jul,Jul 15\nA,3,0\n');
    const match = await proposed(content);
    expect(match.questions[0]).toMatchObject({ about: 'year' });
    expect(await counts(content, answered(match, { year: 2025 }))).toEqual(['A 2025-07-01 3', 'A 2025-07-15 0']);
  });

  test('a word in place of a count is asked about; it can say why a trap was unfit, and stays in the note', async () => {
    const content = bytes('Trap,2025-07-01,2025-07-15\nA,3,down\nB,-,12\nC,gone,?\n');
    const match = await proposed(content);
    expect(match.words).toEqual({ down: null, '-': null, gone: null, '?': null });
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
    expect(again.questions.map(({ about }) => about)).toEqual(['constants.condition']);
    const constants = { ...again.constants, condition: 'fit' as const };
    expect(await applyMatch(DAY_PER_COLUMN, { ...again, constants }, existing)).toEqual({
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
    const match = answered(await proposed(content));
    expect(await problemsOf(content, match)).toMatchObject([
      { where: { file: 'sheet.csv', row: 2, column: 'B' }, got: '-3', expected: expect.stringContaining('whole number') },
      { where: { file: 'sheet.csv', row: 2, column: 'C' }, got: '2.5', expected: expect.stringContaining('whole number') },
    ]);
    const beforeHanging = bytes('Trap,2025-07-01,2025-06-01\nA,3,1\n');
    expect(await problemsOf(beforeHanging, match)).toMatchObject([
      { where: { row: 2, column: 'checked_on' }, got: '2025-06-01', expected: expect.stringContaining('2025-06-20') },
    ]);
  });

  test('a sheet without days is refused with what is expected', async () => {
    expect(await proposeMatch(bytes('a,b\n1,2\n'), 'x.csv')).toMatchObject({
      ok: false,
      problems: [{ where: { file: 'x.csv' }, got: 'a sheet in which no days were found' }],
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
    expect(match.needsDateOrder).toBe(false);
    expect(sorted(await counts(content, answered(match)))).toEqual(EXPECTED);
  });

  test('of several sheets one is asked for by name', async () => {
    const content = workbookOf({ Readme: { rows: [['Counts of an invented season']] }, 'July 2025': { rows: GOOD } });
    const match = await proposed(content);
    expect(match.questions[0]).toEqual({
      about: 'sheet',
      ask: 'Which sheet of the workbook holds the counts?',
      choices: ['Readme', 'July 2025'],
      suggestion: 'July 2025',
    });
    expect(await problemsOf(content, answered(match, { sheet: null }))).toMatchObject([{ got: '2 sheets: Readme, July 2025' }]);
    expect(sorted(await counts(content, answered(match)))).toEqual(EXPECTED);
  });

  test('merged cells, error cells and formulas without a result are each named', async () => {
    const rows = [...GOOD, ['C', { error: '#REF!' }, { formula: 'B2' }]];
    const content = workbookOf({ Counts: { rows, merged: ['A2:A3'] } });
    const result = await proposeMatch(content, 'counts.xlsx');
    expect(result.ok ? [] : result.problems).toEqual([
      {
        where: { file: 'counts.xlsx', row: 2, column: 'A' },
        got: 'merged cells A2:A3 on sheet Counts',
        expected: 'one value in each cell',
        fix: 'Unmerge them (Merge & Center off), and write the value into every cell it holds for.',
      },
      {
        where: { file: 'counts.xlsx', row: 4, column: 'B' },
        got: 'the error #REF!',
        expected: 'a value',
        fix: expect.any(String),
      },
      {
        where: { file: 'counts.xlsx', row: 4, column: 'C' },
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
