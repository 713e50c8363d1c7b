import { groupBy, type Problem } from '@duskwatch/core';

/** Problems as lines for people, one each, or as one JSON array for programs. */
export function formatProblems(problems: readonly Problem[], json: boolean): string {
  if (json) return `${JSON.stringify(problems, null, 2)}\n`;
  const lines = [...groupedAlike(problems).values()].map(formatAlike);
  if (problems.length > 1) lines.push(`${problems.length} problems`);
  return `${lines.join('\n')}\n`;
}

/** The same found in many rows is one mistake to mend. */
const groupedAlike = (problems: readonly Problem[]): Map<string, Problem[]> =>
  groupBy(problems, ({ where, got, expected, fix }) =>
    JSON.stringify([where.file, where.column, where.parameter, got, expected, fix]),
  );

function formatAlike(alike: readonly Problem[]): string {
  const more = alike.length - 1;
  return `${formatProblem(alike[0]!)}${more === 0 ? '' : ` (the same in ${more} more ${more === 1 ? 'row' : 'rows'})`}`;
}

function formatProblem({ where, got, expected, fix }: Problem): string {
  const place = [
    where.file,
    where.row === undefined ? undefined : `row ${where.row}`,
    where.column === undefined ? undefined : `column ${where.column}`,
    where.parameter,
  ].filter((part) => part !== undefined);
  return `${place.length > 0 ? `${place.join(', ')}: ` : ''}got ${got === '' ? 'nothing' : got}; expected ${expected}. ${fix}`;
}
