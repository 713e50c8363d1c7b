import { writeFile } from 'node:fs/promises';
import {
  day,
  english,
  prepare,
  type ScoutingSheet,
  type SheetWanted,
  scoutingSheets,
  scoutingView,
  scoutingWording,
} from '@duskwatch/core';
import { scoutingPdf } from '@duskwatch/server/documents';
import { alignColumns } from '../columns.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { programOnDay, type ReadOptions, titleOf } from '../read-program.ts';
import { print } from '../terminal.ts';

interface ScoutingOptions extends ReadOptions {
  readonly field?: string;
  readonly insect?: string;
  readonly pdf?: string;
  readonly paper: 'a4' | 'letter';
  readonly language: 'en' | 'es';
}

export async function scouting(folder: string | undefined, options: ScoutingOptions): Promise<Outcome> {
  const { field, insect, pdf, paper, language } = options;
  if ((field === undefined) !== (insect === undefined))
    return misused(optionProblem('--field', String(field), 'a field and an insect together', 'Name both, or neither.'));
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const prepared = prepare(read.program, { on: day(read.on) });
  const wanted: SheetWanted[] | null = field !== undefined && insect !== undefined ? [{ fieldId: field, insect }] : null;
  if (wanted === null && pdf === undefined) {
    const view = scoutingView(prepared);
    print(options.json ? JSON.stringify(view, null, 2) : [titleOf(read), ...listOf(view)].join('\n'));
    return done;
  }
  const sheets = scoutingSheets(prepared, wanted);
  if (!sheets.ok) return faulty(...sheets.problems);
  if (pdf === undefined) {
    print(
      options.json ? JSON.stringify(sheets.value, null, 2) : sheets.value.flatMap((sheet) => linesOf(sheet, language)).join('\n'),
    );
    return done;
  }
  await writeFile(pdf, await scoutingPdf(sheets.value, { paper: paper === 'a4' ? 'A4' : 'Letter', language }), { flag: 'wx' });
  print(`${sheets.value.length} ${sheets.value.length === 1 ? 'sheet' : 'sheets'} written to ${pdf}.`);
  return done;
}

function listOf(view: ReturnType<typeof scoutingView>): string[] {
  const words = english({ temperature: 'C' });
  const plans = scoutingWording('en');
  const rows = view.fields.flatMap(({ fieldId, pairs }) =>
    pairs.map(({ insect, verb, by, dueSince, rules }) => {
      const plan = view.plans.find(({ ruleId }) => ruleId === rules[0]?.ruleId);
      return [
        fieldId,
        insect,
        words.verb[verb],
        words.when({ verb, by, dueSince }) ?? '',
        plan ? plans.figure(plan) : 'no figure published',
      ];
    }),
  );
  return rows.length === 0 ? [plans.sheet.none] : alignColumns([['field', 'insect', 'verb', 'date', 'figure'], ...rows]);
}

function linesOf({ field, insect, look, walk, plan, lines, curves }: ScoutingSheet, language: 'en' | 'es'): string[] {
  const w = scoutingWording(language);
  const sampled = plan ?? ({ unit: 'plants', sign: 'infested' } as const);
  const table = lines.map(({ lap, place, samples, below, above }) => [
    w.place(place, lap, walk.places),
    String(samples),
    below === null ? '-' : `0-${below}`,
    above === null ? '-' : `${above}+`,
  ]);
  return [
    `${field.name}, ${insect.commonName[language]}`,
    plan ? `${w.figure(plan)} (${plan.source})` : w.noFigure(insect.commonName[language]),
    look?.text[language] ?? w.sheet.noLook,
    ...w.path(walk, sampled.unit).map((step, at) => `${at + 1}. ${step}`),
    ...alignColumns([[w.sheet.place, w.sheet.examined(sampled.unit), w.sheet.below, w.sheet.above], ...table]),
    ...(plan && curves ? [...w.risks(plan, curves.atM0, curves.atM1), w.basis(plan), w.clumping(plan)] : []),
    ...w.cautions,
  ];
}
