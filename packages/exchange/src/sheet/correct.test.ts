import { expect, test } from 'vitest';
import { answerMatch } from './answers.ts';
import { applyMatch } from './apply-match.ts';
import { correct } from './correct.ts';
import { proposeMatch } from './propose-match.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const look = async (text: string) => {
  const looked = await proposeMatch(bytes(text), 'counts.csv');
  if (!looked.ok) throw new Error(JSON.stringify(looked.problems));
  return looked.value;
};
const options = { file: 'counts.csv' };

/** Rows that nothing on the sheet tells from counts. Invented. */
const SHEET = `Trap,2025-06-02,2025-06-09,2025-06-16
Oak gate,3,4,5
Pond,1,0,2
Week of the fair,4,4,7
Mill,9,8,7
`;

test('rows that are said to be totals are left out, and read after all when that was a slip', async () => {
  const looked = await look(SHEET);
  expect(looked.proposal.reading).toMatchObject({ traps: 4, checks: 12 });
  const without = correct(looked, { is: 'totals', sheet: null, from: 4, to: 4 }, options);
  if (!without.ok) throw new Error(JSON.stringify(without.problems));
  expect(without.value.proposal.reading).toMatchObject({ traps: 3, checks: 9 });
  const back = correct(without.value, { is: 'counts', sheet: null, from: 4, to: 4 }, options);
  expect(back.ok && back.value.proposal.reading).toMatchObject({ traps: 4, checks: 12 });
});

test('rows that are said to be one farm’s block are of the farm that their first row names', async () => {
  const text = `Trap,2025-06-02,2025-06-09
Oak gate,3,4
Pond,1,0
Brook Farm,,
Mill,9,8
Weir,2,2
`;
  const looked = correct(await look(text), { is: 'farm-block', sheet: null, from: 4, to: 6 }, options);
  if (!looked.ok) throw new Error(JSON.stringify(looked.problems));
  const { match, questions } = looked.value.proposal;
  const given = {
    insect: 'helicoverpa-zea',
    design: 'mesh-cone',
    crop: 'sweet-corn',
    farm: 'Hill Farm',
    field: 'each-trap',
    condition: 'fit',
    hungOn: '2025-05-26',
  };
  const asked = Object.fromEntries(Object.entries(given).filter(([id]) => questions.some((question) => question.id === id)));
  const answered = answerMatch(match!, questions, asked);
  if (!answered.ok || answered.value.kind !== 'counts') throw new Error(JSON.stringify(answered));
  const read = await applyMatch(bytes(text), answered.value, undefined, 'counts.csv');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.value.checks).toHaveLength(8);
  const farmOf = new Map(read.value.fields.map(({ fieldId, farm }) => [fieldId, farm]));
  expect(Object.fromEntries(read.value.traps.map(({ station, informs }) => [station, farmOf.get(informs[0]!)]))).toEqual({
    'Oak gate': 'Hill Farm',
    Pond: 'Hill Farm',
    Mill: 'Brook Farm',
    Weir: 'Brook Farm',
  });
});

test('pointing where there are no counts, or at all of them, changes nothing and says why', async () => {
  const looked = await look(SHEET);
  expect(correct(looked, { is: 'totals', sheet: null, from: 90, to: 95 }, options)).toMatchObject({ ok: false });
  expect(correct(looked, { is: 'totals', sheet: null, from: 1, to: 99 }, options)).toMatchObject({ ok: false });
  expect(correct(looked, { is: 'farm-block', sheet: 'another', from: 2, to: 3 }, options)).toMatchObject({ ok: false });
});
