import { readFileSync } from 'node:fs';
import { emptyProgram, sheetProposalSchema } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { answerMatch } from './answers.ts';
import { applyAnyMatch } from './apply-match.ts';
import { ANSWERS, expected, files, folder } from './fixtures.testing.ts';
import { proposeMatch } from './propose-match.ts';

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
