import { type Advice, adviseAll, day, english, prepare } from '@duskwatch/core';
import { alignColumns } from '../columns.ts';
import { done, type Outcome } from '../outcome.ts';
import { type ProgramOnDay, programOnDay, type ReadOptions, titleOf } from '../read-program.ts';
import { bold, print } from '../terminal.ts';

export async function advise(folder: string | undefined, options: ReadOptions): Promise<Outcome> {
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const advice = adviseAll(prepare(read.program, { on: day(read.on) }));
  print(options.json ? JSON.stringify(advice, null, 2) : adviceTable(read, advice));
  return done;
}

function adviceTable(read: ProgramOnDay, advice: readonly Advice[]): string {
  const words = english({ temperature: 'C' });
  const title = titleOf(read);
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
