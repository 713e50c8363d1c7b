import { type Problem, type Program, type SheetMatch, WORD_MEANINGS } from '@duskwatch/core';
import { dayForm, sheetDay } from './sheet-day.ts';
import type { Sighting } from './sightings.ts';

/** Questions of the match that must be answered before its sheet can be read. */
export function openAnswers(match: SheetMatch, seen: readonly Sighting[], existing: Program): Problem[] {
  const { columns, constants, words } = match;
  const known = new Set(existing.traps.map(({ trapId }) => trapId));
  const makesTraps = seen.some(({ trap }) => !known.has(trap.text));
  const days = seen.map(({ day }) => day).filter((day) => dayForm(day) !== null);
  const needsYear = days.some((day) => dayForm(day)?.needsYear === true);
  const needsOrder = days.some(
    (day) => (dayForm(day)?.orders.length ?? 0) > 0 && sheetDay(day, { order: null, year: 2024 }) === null,
  );

  const open: [about: string, expected: string][] = [];
  if (needsOrder && match.dateOrder === null)
    open.push(['dateOrder', 'dmy or mdy: which comes first in the dates of this sheet']);
  if (needsYear && match.year === null) open.push(['year', 'the year that the days are of']);
  for (const [word, meaning] of Object.entries(words)) {
    if (meaning === null) open.push([`words.${word}`, `one of ${WORD_MEANINGS.join(', ')}`]);
  }
  if (columns.condition === undefined && constants.condition === null) {
    open.push(['constants.condition', 'fit, doubtful or unfit: the condition of the traps at these visits']);
  }
  if (makesTraps) {
    for (const [part, expected] of TRAP_PARTS) {
      if (columns[part] === undefined && constants[part] === null) open.push([`constants.${part}`, expected]);
    }
    if (columns.hungOn === undefined && match.hungOn === null) {
      open.push(['hungOn', 'the day the traps were hung, or first-date: the first count then has no nights before it']);
    }
  }
  return open.map(([about, expected]) => ({
    where: { column: about },
    got: 'no answer yet',
    expected,
    fix: `Set ${about} in the match.`,
  }));
}

const TRAP_PARTS = [
  ['insect', 'the insect the traps are for'],
  ['design', 'the design of the traps'],
  ['field', 'the field the traps inform, or each-trap'],
  ['crop', 'the crop that grows there'],
  ['farm', 'the farm the fields belong to'],
] as const;
