import { type Advice, adviseAll, day, english, type IsoDay, type Program, prepare, type Result } from '@duskwatch/core';
import { readProgramFolder } from '@duskwatch/exchange';
import { readingDay } from '@duskwatch/server/clock';
import { alignColumns } from '../columns.ts';
import { type DataOption, withDatabase } from '../database.ts';
import { dayOption } from '../heat-options.ts';
import { done, faulty, misused, type Outcome } from '../outcome.ts';
import { bold, print } from '../terminal.ts';

export interface AdviseOptions extends DataOption {
  readonly on?: string;
  readonly json?: boolean;
}

export async function advise(folder: string | undefined, options: AdviseOptions): Promise<Outcome> {
  const asked = options.on === undefined ? null : dayOption('--on', options.on);
  if (asked && !asked.ok) return misused(...asked.problems);
  const read = await readProgram(folder, options);
  if (!read.ok) return faulty(...read.problems);

  const program = read.value;
  const on = options.on ?? readingDay(program);
  const advice = adviseAll(prepare(program, { on: day(on) }));
  print(options.json ? JSON.stringify(advice, null, 2) : adviceTable(program, on, advice));
  return done;
}

async function readProgram(folder: string | undefined, options: DataOption): Promise<Result<Program>> {
  if (folder !== undefined) return readProgramFolder(folder);
  return { ok: true, value: await withDatabase(options, (store) => store.loadProgram()) };
}

function adviceTable({ settings }: Program, on: IsoDay, advice: readonly Advice[]): string {
  const words = english({ temperature: 'C' });
  const title = `${settings.name}${settings.invented ? ' (invented)' : ''}, ${on}`;
  if (advice.length === 0) return `${title}\nNo field with a trap, sample or treatment yet: nothing to advise on.`;
  const rows = advice.map((each) => [
    each.field,
    words.insect(each.insect),
    words.verb[each.verb],
    words.when(each) ?? '',
    words.rate(each) ?? '',
    each.because[0] ? words.evidence(each.because[0]) : '',
  ]);
  const [header, ...lines] = alignColumns([['field', 'insect', 'verb', 'date', 'moths per trap', 'because'], ...rows]);
  return [title, header!, ...lines.map((line, at) => (advice[at]!.verb === 'decide' ? bold(line) : line))].join('\n');
}
