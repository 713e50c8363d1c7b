import { simulateDemo, UNENTERED_FARM } from './program.ts';

const HEADER = 'trap_id,checked_on,target_count,other_count,condition,emptied,note';

export interface TypingErrorSheet {
  readonly name: string;
  /** As typed: a letter O in a count, and last year's date, before the trap was hung. */
  readonly text: string;
  /** As meant: imports cleanly into the demo. */
  readonly corrected: string;
}

/** The newest round of one farm, as somebody typed them in a hurry. */
export function demoTypingErrorCsv(): TypingErrorSheet {
  const { unentered } = simulateDemo();
  const rows = unentered.map((check) => [
    check.trapId,
    check.checkedOn,
    String(check.targetCount ?? ''),
    String(check.otherCount ?? ''),
    check.condition,
    check.emptied ? 'yes' : 'no',
    check.note ?? '',
  ]);
  const typed = rows.map((row) => [...row]);
  const withZero = typed.findIndex((row) => row[2]!.includes('0'));
  typed[withZero]![2] = typed[withZero]![2]!.replace('0', 'O');
  typed.at(-1)![1] = typed.at(-1)![1]!.replace('2026', '2025');
  const sheet = (lines: readonly (readonly string[])[]) => `${[HEADER, ...lines.map((line) => line.join(','))].join('\n')}\n`;
  return {
    name: `checks-${UNENTERED_FARM.toLowerCase()}-${unentered[0]!.checkedOn}.csv`,
    text: sheet(typed),
    corrected: sheet(rows),
  };
}
