import type { Problem } from '@duskwatch/core';

/** Problems as lines for people, one each, or as one JSON array for programs. */
export function formatProblems(problems: readonly Problem[], json: boolean): string {
  if (json) return `${JSON.stringify(problems, null, 2)}\n`;
  const lines = problems.map(formatProblem);
  if (problems.length > 1) lines.push(`${problems.length} problems`);
  return `${lines.join('\n')}\n`;
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
