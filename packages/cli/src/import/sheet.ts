import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
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
import {
  type AnyMatch,
  answerMatch,
  applyAnyMatch,
  decodeSheetText,
  isAnswered,
  proposeMatch,
  readBytes,
  readMatch,
} from '@duskwatch/exchange';

export interface SheetOptions {
  /** File with a match, or a whole proposal. */
  readonly match?: string;
  readonly sheet?: string;
  /** Answers by the ids of their questions. */
  readonly answers?: Readonly<Record<string, string>>;
  /** Asks a person for what is still open; null for an answer she does not give. */
  readonly askPerson?: (question: SheetQuestion) => Promise<string | null>;
}

/** How a sheet would be read, with the questions that only a person can answer. The match holds what was answered already. */
export async function proposeSheet(path: string, existing: Program, options: SheetOptions): Promise<Result<SheetProposal>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  const looked = await proposeMatch(bytes.value, basename(path), { sheet: options.sheet ?? null, existing });
  if (!looked.ok) return looked;
  const { match, questions } = looked.value.proposal;
  if (match === null) return ok(looked.value.proposal);
  const answered = answerMatch(match, questions, options.answers ?? {});
  if (!answered.ok) return answered;
  const open = questions.filter((question) => !isAnswered(answered.value, question));
  return ok({ ...looked.value.proposal, questions: open, match: answered.value });
}

/** Reads a sheet by the match given, or by the proposed one with the answers; refused while anything is open. */
export async function readSheet(path: string, existing: Program, options: SheetOptions): Promise<Result<Partial<Program>>> {
  const match = await settledMatch(path, existing, options);
  if (!match.ok) return match;
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  return applyAnyMatch(bytes.value, match.value, existing, basename(path));
}

async function settledMatch(path: string, existing: Program, options: SheetOptions): Promise<Result<AnyMatch>> {
  if (options.match !== undefined) {
    const kept = matchOfFile(options.match);
    if (!kept.ok || options.answers === undefined) return kept;
    const asked = await proposeSheet(path, existing, { ...(options.sheet === undefined ? {} : { sheet: options.sheet }) });
    return asked.ok ? answerMatch(kept.value, asked.value.questions, options.answers) : asked;
  }
  const proposed = await proposeSheet(path, existing, options);
  if (!proposed.ok) return proposed;
  const { match, questions } = proposed.value;
  if (match === null) return refuse(nothingToMatch(path));
  let answered = match;
  const open: SheetQuestion[] = [];
  for (const question of questions) {
    const answer = (await options.askPerson?.(question)) ?? null;
    const taken = answer === null ? null : answerMatch(answered, questions, { [question.id]: answer });
    if (taken?.ok === false) return taken;
    if (taken === null) open.push(question);
    else answered = taken.value;
  }
  return open.length > 0 ? { ok: false, problems: open.map((question) => openQuestion(path, question)) } : ok(answered);
}

/** However it was saved: PowerShell writes UTF-16, editors a byte order mark. */
function matchOfFile(path: string): Result<AnyMatch> {
  try {
    return readMatch(JSON.parse((decodeSheetText(readFileSync(path)) ?? '').replace(/^\uFEFF/, '')));
  } catch (error) {
    return refuse({
      where: { file: path },
      got: (error as Error).message,
      expected: 'a match as --propose prints it',
      fix: 'Let it be proposed again, and change only the answers.',
    });
  }
}

function openQuestion(path: string, question: SheetQuestion): Problem {
  const { id, choices, suggestion } = question;
  const perhaps = suggestion === null ? '' : ` Perhaps ${suggestion}.`;
  return {
    where: { file: basename(path), column: id },
    got: `a sheet that does not say (${sheetEnglish.evidence(question)})`,
    expected: `${sheetEnglish.question(question)}${choices.length > 0 ? ` (${choices.join(', ')})` : ''}${perhaps}`,
    fix: `Answer with --answer "${id}=…"; or run: duskwatch import ${path} --propose --out match.json, and import with --match match.json.`,
  };
}

const nothingToMatch = (path: string): Problem => ({
  where: { file: basename(path) },
  got: 'a file that has no counts and no weather to match',
  expected: 'a sheet of counts or of weather',
  fix: 'Choose another file.',
});
