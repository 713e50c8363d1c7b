import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { ok, type Problem, type Program, type Result, refuse, type SheetMatch } from '@duskwatch/core';
import { applyMatch, proposeMatch, readBytes } from '@duskwatch/exchange';

export interface SheetOptions {
  readonly match?: string;
  readonly sheet?: string;
}

/** How a wide sheet would be read, with the questions that only a person can answer. */
export async function proposeSheetMatch(path: string, existing: Program, sheet: string | undefined): Promise<Result<SheetMatch>> {
  const bytes = await readBytes(path);
  return bytes.ok ? proposeMatch(bytes.value, basename(path), { sheet: sheet ?? null, existing }) : bytes;
}

/** Reads a wide sheet by the match given, or by the proposed one when that leaves nothing open. */
export async function readSheet(path: string, existing: Program, options: SheetOptions): Promise<Result<Partial<Program>>> {
  const match =
    options.match === undefined
      ? await proposeSheetMatch(path, existing, options.sheet)
      : readMatch(options.match, options.sheet);
  if (!match.ok) return match;
  if (options.match === undefined && match.value.questions.length > 0)
    return { ok: false, problems: match.value.questions.map((question) => openQuestion(path, question)) };
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  return applyMatch(bytes.value, match.value, existing, basename(path));
}

function readMatch(path: string, sheet: string | undefined): Result<SheetMatch> {
  try {
    const match = JSON.parse(readFileSync(path, 'utf8')) as SheetMatch;
    return ok(sheet === undefined ? match : { ...match, sheet });
  } catch (error) {
    return refuse({
      where: { file: path },
      got: (error as Error).message,
      expected: 'a match as --propose prints it',
      fix: 'Let it be proposed again, and change only the answers.',
    });
  }
}

function openQuestion(path: string, { about, ask, choices, suggestion }: SheetMatch['questions'][number]): Problem {
  const file = basename(path);
  return {
    where: { file, column: about },
    got: 'a sheet that does not say',
    expected: `${ask}${choices.length > 0 ? ` (${choices.join(', ')})` : ''}${suggestion === null ? '' : ` Perhaps ${suggestion}.`}`,
    fix: `Run: duskwatch import ${path} --propose > match.json; answer there under ${about}; then import with --match match.json.`,
  };
}
