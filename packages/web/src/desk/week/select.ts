/** Which rows and columns of the week are shown, and in which order. */
import { type InsectName, needsNothing, type Verb, type WeekCell, type WeekField, type WeekView } from '@duskwatch/core';
import { VERBS } from '../../shared/advice/verbs.ts';
import { language } from '../../text/language.ts';
import type { WeekSearch } from './search.ts';

export interface WeekColumn {
  readonly insect: InsectName;
  /** Place in `WeekField.cells`. */
  readonly index: number;
}

export interface WeekGroup {
  /** Null: the order is not by farm or crop. */
  readonly title: string | null;
  readonly fields: readonly WeekField[];
  /** Fields that need nothing now, in one line until somebody asks for them. */
  readonly folded: readonly WeekField[];
}

export interface WeekSelection {
  readonly columns: readonly WeekColumn[];
  readonly groups: readonly WeekGroup[];
  readonly shown: number;
}

const byText = new Intl.Collator(language, { numeric: true }).compare;
const NEVER = '9999-12-31';

/** Position of the field's most pressing cell: verb first, then its date. */
function urgency(cells: readonly WeekCell[]): string {
  const keys = cells.map(({ advice }) => `${VERBS.indexOf(advice.verb)}|${advice.dueSince ?? advice.by ?? NEVER}`);
  return keys.sort()[0] ?? `${VERBS.length}|${NEVER}`;
}

const cellsOf = (field: WeekField, columns: readonly WeekColumn[]) => columns.map((column) => field.cells[column.index]!);

function columnsUnder(view: WeekView, search: WeekSearch): WeekColumn[] {
  const all = view.insects.map((insect, index) => ({ insect, index }));
  return search.insect ? all.filter((column) => column.insect.id === search.insect) : all;
}

function fieldsUnder(view: WeekView, { farm, crop, verb }: WeekSearch, columns: readonly WeekColumn[]): readonly WeekField[] {
  return view.fields.filter(
    (field) =>
      (!farm || field.farm === farm) &&
      (!crop || field.crop === crop) &&
      (!verb || columns.some(({ index }) => field.cells[index]!.advice.verb === verb)),
  );
}

export function selectWeek(view: WeekView, search: WeekSearch): WeekSelection {
  const columns = columnsUnder(view, search);
  const fields = fieldsUnder(view, search, columns);
  const sort = search.sort ?? 'farm';
  const pressing = new Map(fields.map((field) => [field, urgency(cellsOf(field, columns))]));
  const byPressing = (a: WeekField, b: WeekField) => byText(pressing.get(a)!, pressing.get(b)!);
  const byName = (a: WeekField, b: WeekField) => byText(a.name, b.name);
  const order: Record<typeof sort, (a: WeekField, b: WeekField) => number> = {
    farm: (a, b) => byPressing(a, b) || byText(a.farm, b.farm) || byName(a, b),
    urgency: (a, b) => byPressing(a, b) || byName(a, b),
    crop: (a, b) => byText(a.crop, b.crop) || byName(a, b),
    name: byName,
  };
  const ordered = [...fields].sort(order[sort]);
  const title = sort === 'farm' ? (field: WeekField) => field.farm : sort === 'crop' ? (field: WeekField) => field.crop : null;
  // Whoever looks for one verb wants to see the fields that say it.
  const isQuiet = (field: WeekField) => sort === 'farm' && !search.verb && needsNothing({ cells: cellsOf(field, columns) });
  return { columns, groups: grouped(ordered, title, isQuiet), shown: ordered.length };
}

/** Groups in the order of their first fields: the farm with the most pressing field comes first. */
function grouped(
  fields: readonly WeekField[],
  title: ((field: WeekField) => string) | null,
  isQuiet: (field: WeekField) => boolean,
): WeekGroup[] {
  if (!title) return fields.length > 0 ? [{ title: null, fields, folded: [] }] : [];
  const groups = new Map<string, WeekField[]>();
  for (const field of fields) {
    const group = groups.get(title(field));
    if (group) group.push(field);
    else groups.set(title(field), [field]);
  }
  return [...groups].map(([name, members]) => ({
    title: name,
    fields: members.filter((field) => !isQuiet(field)),
    folded: members.filter(isQuiet),
  }));
}

/** How many cells say each verb, under the filters other than the verb's own. */
export function countVerbs(view: WeekView, search: WeekSearch): ReadonlyMap<Verb, number> {
  const columns = columnsUnder(view, search);
  const counts = new Map<Verb, number>();
  for (const field of fieldsUnder(view, { ...search, verb: undefined }, columns))
    for (const { index } of columns) {
      const { verb } = field.cells[index]!.advice;
      counts.set(verb, (counts.get(verb) ?? 0) + 1);
    }
  return counts;
}

export const cellKey = (fieldId: string, insect: string) => `${fieldId}~${insect}`;
