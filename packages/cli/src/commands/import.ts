import { writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import {
  ok,
  type Problem,
  type Program,
  type Result,
  refuse,
  type SheetProposal,
  type SheetQuestion,
  sheetEnglish,
} from '@duskwatch/core';
import { besideIn, type DataOption, describeDatabase, withDatabase } from '../database.ts';
import { proposeImport } from '../import/propose.ts';
import { type ReadImportOptions, readImport } from '../import/read.ts';
import { done, faulty, type Outcome } from '../outcome.ts';
import { progressBar } from '../progress.ts';
import { note, print } from '../terminal.ts';
import { whoWrites } from '../who-writes.ts';

export interface ImportOptions extends DataOption, Pick<ReadImportOptions, 'match' | 'sheet' | 'units'> {
  readonly propose?: boolean;
  readonly json?: boolean;
  /** Where the proposed match is written. */
  readonly out?: string;
  /** `id=answer`, as often as there are questions. */
  readonly answer?: readonly string[];
}

/** All of it or, when anything is faulty, nothing. What the database holds already is added no second time. */
export function importPath(path: string, options: ImportOptions): Promise<Outcome> {
  return withDatabase(options, async (store) => {
    const held = await store.loadProgram();
    const answers = answersIn(options.answer ?? []);
    if (!answers.ok) return faulty(...answers.problems);
    const reads = { ...options, ...(options.answer && { answers: answers.value }) };
    if (options.propose || options.out !== undefined) return propose(path, held, reads);

    const reading = await progressBar('Reading');
    const read = await readImport(path, held, {
      ...reads,
      ...(asksHere(options) && { askPerson }),
      onProgress: reading.update,
    }).finally(reading.stop);
    if (!read.ok) return faulty(...read.problems);
    // An invented folder may join an invented program; what is real may not.
    if (held.settings.invented && held.fields.length > 0 && read.value.settings?.invented !== true)
      return faulty(intoInvented(options));

    const writing = await progressBar('Writing');
    const imported = await store
      .importProgram(read.value, {
        author: whoWrites(),
        at: new Date().toISOString(),
        onProgress: ({ done, total }) => writing.update(done, total),
      })
      .finally(writing.stop);
    if (!imported.ok) return faulty(...imported.problems);

    const { added, changed, unchanged } = imported.value;
    if (options.json) print(JSON.stringify({ added, changed, unchanged }));
    else note(`${added} records added, ${changed} changed, ${unchanged} already there, in ${describeDatabase(options)}`);
    return done;
  });
}

const intoInvented = (options: DataOption): Problem => ({
  where: {},
  got: `an invented program in ${describeDatabase(options)}`,
  expected: 'a program of your own: invented and real records are never mixed',
  fix: `Import into the program that duskwatch serve opens beside the demo: add --data ${JSON.stringify(besideIn(options, 'own').data)}.`,
});

async function propose(path: string, held: Program, options: ReadImportOptions & ImportOptions): Promise<Outcome> {
  const proposed = await proposeImport(path, held, options);
  if (!proposed.ok) return faulty(...proposed.problems);
  const { reading, asideSheets, questions, match } = proposed.value;
  if (options.out !== undefined) writeFileSync(options.out, `${JSON.stringify(match, null, 2)}\n`);
  if (options.json) {
    print(JSON.stringify({ reading, asideSheets, questions: questions.map(inWords), match }, null, 2));
    return done;
  }
  print(sheetEnglish.reading(reading));
  for (const aside of asideSheets) print(sheetEnglish.aside(aside));
  for (const question of questions) {
    const { id, choices, suggestion } = question;
    print(`\n${id}: ${sheetEnglish.question(question)}`);
    print(`  ${sheetEnglish.evidence(question)}`);
    if (choices.length > 0) print(`  ${choices.join(', ')}${suggestion === null ? '' : `; perhaps ${suggestion}`}`);
    else if (suggestion !== null) print(`  perhaps ${suggestion}`);
  }
  return done;
}

const inWords = (question: SheetProposal['questions'][number]) => ({
  id: question.id,
  question: sheetEnglish.question(question),
  evidence: sheetEnglish.evidence(question),
  choices: question.choices,
  suggestion: question.suggestion,
});

function answersIn(written: readonly string[]): Result<Record<string, string>> {
  const answers: Record<string, string> = {};
  for (const each of written) {
    const sign = each.lastIndexOf('=');
    if (sign < 1) {
      return refuse({
        where: { parameter: '--answer' },
        got: each,
        expected: 'the id of a question, =, and its answer',
        fix: 'Write for example --answer insect=helicoverpa-zea.',
      });
    }
    answers[each.slice(0, sign)] = each.slice(sign + 1);
  }
  return ok(answers);
}

/** Questions are asked where a person sits who can answer. */
const asksHere = ({ json }: ImportOptions): boolean =>
  json !== true && process.stdin.isTTY === true && process.stderr.isTTY === true;

async function askPerson(question: SheetQuestion): Promise<string | null> {
  const { choices, suggestion } = question;
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  try {
    note(`\n${sheetEnglish.question(question)}\n  ${sheetEnglish.evidence(question)}`);
    const answer = await terminal.question(
      `  ${choices.length > 0 ? `${choices.join(', ')} ` : ''}${suggestion === null ? '' : `[${suggestion}] `}> `,
    );
    return answer.trim() || suggestion;
  } finally {
    terminal.close();
  }
}
