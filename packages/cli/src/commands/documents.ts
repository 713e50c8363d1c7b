/** Labels, checklists and a calendar as files. */
import { existsSync, writeFileSync } from 'node:fs';
import {
  day,
  calendarOf as entriesOf,
  LABEL_GRID_IDS,
  LABEL_GRIDS,
  LANGUAGES,
  type LabelGrid,
  type Language,
  labelGrid,
  labelsPerSheet,
  type Prepared,
  prepare,
  TRAP_DESIGNS,
} from '@duskwatch/core';
import { areProblems, calendarOf, checklistsPdf, labelSummary, labelsPdf, trapsToLabel } from '@duskwatch/server/documents';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { programOnDay, type ReadOptions } from '../read-program.ts';
import { note, print } from '../terminal.ts';

interface DocumentOptions extends ReadOptions {
  readonly out: string;
  readonly language: string;
}

export interface LabelOptions extends DocumentOptions {
  readonly grid: string;
  readonly start: string;
  readonly origin: string;
  readonly contact: string;
  readonly trap?: readonly string[];
  readonly length: 'm' | 'ft';
  readonly outlines?: boolean;
}

export interface ChecklistOptions extends DocumentOptions {
  readonly design?: string;
  readonly paper: 'A4' | 'Letter';
  readonly length: 'm' | 'ft';
}

export async function labels(folder: string | undefined, options: LabelOptions): Promise<Outcome> {
  const grid = LABEL_GRID_IDS.find((id) => id === options.grid);
  if (!grid) return misused(optionProblem('--grid', options.grid, LABEL_GRID_IDS.join(', '), `Choose one:\n${gridList()}`));
  const startAt = Number(options.start);
  const perSheet = labelsPerSheet(labelGrid(grid));
  if (!Number.isInteger(startAt) || startAt < 1 || startAt > perSheet)
    return misused(optionProblem('--start', options.start, `a label of the sheet, 1 to ${perSheet}`, 'Count along the rows.'));
  if (!(URL.canParse(options.origin) && new URL(options.origin).origin === options.origin))
    return misused(
      optionProblem('--origin', options.origin, 'a scheme and a host and nothing after', 'Name it as https://moths.example.'),
    );
  const read = await preparedFor(folder, options);
  if ('exit' in read) return read;
  const traps = trapsToLabel(read.prepared, options.trap ?? null);
  if (areProblems(traps)) return faulty(...traps);
  const { name: programName, invented } = read.prepared.program.settings;
  const { language, length, contact, origin, outlines = false } = options;
  const how = { grid, startAt, language: language as Language, length, contact, origin, outlines, traps, programName, invented };
  const summary = await labelSummary(how);
  if (summary.labels === 0) return faulty(optionProblem('folder', 'no trap that hangs', 'traps to label', 'Add traps first.'));
  writeFileSync(options.out, await labelsPdf(how));
  const [low, high] = summary.legibleFromM!;
  print(
    `${options.out}: ${summary.labels} labels on ${summary.sheets} sheets. Trap codes are read from ${fixed(low)}–${fixed(high)} m.`,
  );
  if (summary.withoutCode.length > 0) note(`Too long for a code on this label: ${summary.withoutCode.join(', ')}`);
  if (summary.replacedLetters.length > 0) note(`Letters that cannot be printed: ${summary.replacedLetters.join(', ')}`);
  return done;
}

export async function checklist(folder: string | undefined, options: ChecklistOptions): Promise<Outcome> {
  const design = TRAP_DESIGNS.find((each) => each === options.design);
  if (options.design !== undefined && !design)
    return misused(optionProblem('--design', options.design, TRAP_DESIGNS.join(', '), 'Name one of these.'));
  const read = await preparedFor(folder, options);
  if ('exit' in read) return read;
  const found = trapsToLabel(read.prepared, null);
  const traps = areProblems(found) ? [] : found;
  const used = TRAP_DESIGNS.filter((each) => traps.some((trap) => trap.design === each));
  const { name: programName, invented } = read.prepared.program.settings;
  const { length, paper } = options;
  const requests = (design ? [design] : used.length > 0 ? used : TRAP_DESIGNS).map((each) => {
    const insects = [...new Set(traps.filter((trap) => trap.design === each).map(({ insect }) => insect))];
    return { design: each, insects, language: options.language as Language, length, paper, programName, invented };
  });
  writeFileSync(options.out, await checklistsPdf(requests));
  print(`${options.out}: ${requests.map((each) => each.design).join(', ')}`);
  return done;
}

export async function calendar(folder: string | undefined, options: DocumentOptions): Promise<Outcome> {
  const read = await preparedFor(folder, options);
  if ('exit' in read) return read;
  const entries = entriesOf(read.prepared, { role: 'coordinator' });
  const { text } = calendarOf({
    program: read.prepared.program,
    entries,
    language: options.language as Language,
    origin: null,
    sent: {},
    now: new Date().toISOString(),
  });
  writeFileSync(options.out, text);
  print(`${options.out}: ${entries.length} entries`);
  return done;
}

async function preparedFor(folder: string | undefined, options: DocumentOptions): Promise<{ prepared: Prepared } | Outcome> {
  if (!(LANGUAGES as readonly string[]).includes(options.language))
    return misused(optionProblem('--language', options.language, LANGUAGES.join(' or '), 'Name one of these.'));
  if (existsSync(options.out))
    return misused(optionProblem('--out', options.out, 'a file that does not exist yet', 'Name another, or move that one away.'));
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  return { prepared: prepare(read.program, { on: day(read.on) }) };
}

const fixed = (value: number): string => value.toFixed(1);

const gridList = (): string => LABEL_GRIDS.map((grid) => `  ${grid.id}: ${nameOf(grid)}`).join('\n');

const nameOf = ({ paper, columns, rows, widthMm, heightMm }: LabelGrid): string =>
  `${paper}, ${columns} × ${rows} labels of ${fixed(widthMm)} × ${fixed(heightMm)} mm`;
