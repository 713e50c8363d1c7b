/** Untidy sheets, invented, as people keep them: what each must become is written beside them in `expected.json`. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { emptyProgram, type SheetReading, sheetProposalSchema } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { answerMatch } from './answers.ts';
import { applyAnyMatch } from './apply-match.ts';
import { proposeMatch } from './propose-match.ts';

const folder = fileURLToPath(new URL('../../fixtures/', import.meta.url));
const expected = JSON.parse(readFileSync(`${folder}expected.json`, 'utf8')) as Record<string, SheetReading>;
const files = readdirSync(folder).filter((file) => file !== 'expected.json');

/** As somebody answers who knows the program; a suggestion is taken. */
const ANSWERS: Readonly<Record<string, string>> = {
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  crop: 'sweet-corn',
  farm: 'Invented Farm',
  field: 'each-trap',
  condition: 'fit',
  hungOn: '2020-04-20',
  year: '2025',
};

test('every sheet says what it must become, and nothing else is there', () => {
  expect(files.sort()).toEqual(Object.keys(expected).sort());
});

test.each(files)('%s', async (file) => {
  const bytes = readFileSync(folder + file);
  const looked = await proposeMatch(bytes, file);
  if (!looked.ok) throw new Error(JSON.stringify(looked.problems));
  const { reading, questions, match } = sheetProposalSchema.parse(looked.value.proposal);
  expect(reading).toEqual(expected[file]);
  if (match === null) return;
  for (const { evidence } of questions) expect(evidence.length).toBeGreaterThan(0);

  const answers = Object.fromEntries(questions.map(({ id, suggestion }) => [id, ANSWERS[id] ?? suggestion ?? '']));
  const answered = answerMatch(match, questions, answers);
  if (!answered.ok) throw new Error(JSON.stringify(answered.problems));
  const read = await applyAnyMatch(bytes, answered.value, emptyProgram(), file);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.value.traps ?? []).toHaveLength(expected[file]!.traps);
  expect(read.value.checks ?? []).toHaveLength(expected[file]!.checks);
  const days = [
    ...(read.value.checks ?? []).map(({ checkedOn }) => checkedOn),
    ...(read.value.weather ?? []).map(({ date }) => date),
  ];
  expect(new Set(days).size).toBe(expected[file]!.days);
});
