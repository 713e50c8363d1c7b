import { growingYearStart } from '../advice/prepare.ts';
import { addDays, type Day, day, dayOf, partsOf, yearOf } from '../base/day.ts';
import type { Program } from '../records/program.ts';

/** A growing year, both days included. */
export interface GrowingYear {
  /** The year of its first day. */
  readonly year: number;
  readonly from: Day;
  readonly to: Day;
}

/** The growing year that holds `on`: from 1 January, or from 1 July where the program's fields lie south of the equator. */
export function growingYear({ fields }: Program, on: Day): GrowingYear {
  const placed = fields.find(({ latitude }) => latitude !== null);
  return yearFrom(placed ? growingYearStart(placed, on) : dayOf(yearOf(on), 1, 1));
}

/** Every growing year in which something was checked, oldest first. */
export function growingYears(program: Program): GrowingYear[] {
  const days = new Set(program.checks.map(({ checkedOn }) => checkedOn));
  const starts = new Set([...days].map((on) => growingYear(program, day(on)).from));
  return [...starts].sort((a, b) => a - b).map(yearFrom);
}

function yearFrom(from: Day): GrowingYear {
  const { year, month, date } = partsOf(from);
  return { year, from, to: addDays(dayOf(year + 1, month, date), -1) };
}
