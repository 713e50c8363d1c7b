import { type CheckRecord, day, type Entry, questionInWords, recordQuestions } from '@duskwatch/core';
import type { CurrentRecord } from '@duskwatch/store';
import { withDatabase } from '../database.ts';
import { done, type Outcome } from '../outcome.ts';
import { programOnDay, type ReadOptions, titleOf } from '../read-program.ts';
import { print } from '../terminal.ts';
import { jsonWithDays } from '../written-days.ts';

export async function questions(folder: string | undefined, options: ReadOptions): Promise<Outcome> {
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const entries =
    folder === undefined ? await withDatabase(options, async (store) => enteredOnce(await store.current('checks'))) : [];
  const found = recordQuestions(read.program, { on: day(read.on), entries });
  if (options.json) print(jsonWithDays(found, ['from', 'to']));
  else {
    const held = `${found.compared} of ${found.visits} fit visits of the season could be held against other traps.`;
    const lines = found.questions.map((question) => `- ${questionInWords(question, 'en')}`);
    print([titleOf(read), held, ...(lines.length > 0 ? lines : ['Nothing to ask about.'])].join('\n'));
  }
  return done;
}

/** Checks as somebody first sent them. What was imported at the database has one instant for all and tells nothing. */
const enteredOnce = (checks: readonly CurrentRecord<'checks'>[]): Entry[] =>
  checks
    .filter(({ arrival, baseRevisionId }) => arrival !== null && baseRevisionId === null)
    .map(({ value, author, at }) => ({ check: value satisfies CheckRecord, author, at }));
