/** Which rows and columns of the week are shown, and in which order. */
import { day, type InsectName, type SeasonLine, type Verb, type WeekCell, type WeekField, type WeekView } from '@duskwatch/core';
import { VERBS, type WeekSearch } from '../app/search.ts';
import { monthTicks } from '../draw/axis.ts';
import { language } from '../words/language.ts';
import type { LineScale } from './Sparkline.tsx';

export interface WeekColumn {
  readonly insect: InsectName;
  /** Place in `WeekField.cells`. */
  readonly index: number;
}

export interface WeekGroup {
  /** Null: the order is not by farm or crop. */
  readonly title: string | null;
  readonly fields: readonly WeekField[];
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
  const keys = cells.map(({ advice }) => `${VERBS.indexOf(advice.verb)}|${advice.by ?? NEVER}`);
  return keys.sort()[0] ?? `${VERBS.length}|${NEVER}`;
}

const cellsOf = (field: WeekField, columns: readonly WeekColumn[]) => columns.map((column) => field.cells[column.index]!);

export function selectWeek(view: WeekView, search: WeekSearch): WeekSelection {
  const all = view.insects.map((insect, index) => ({ insect, index }));
  const columns = search.insect ? all.filter((column) => column.insect.id === search.insect) : all;
  const fields = view.fields
    .filter((field) => !search.farm || field.farm === search.farm)
    .filter((field) => !search.crop || field.crop === search.crop)
    .filter((field) => !search.verb || cellsOf(field, columns).some((cell) => cell.advice.verb === search.verb));
  const sort = search.sort ?? 'farm';
  const key: Record<typeof sort, (field: WeekField) => string> = {
    farm: (field) => field.farm,
    crop: (field) => field.crop,
    name: () => '',
    urgency: (field) => urgency(cellsOf(field, columns)),
  };
  const ordered = fields
    .map((field) => ({ field, by: key[sort](field) }))
    .sort((a, b) => byText(a.by, b.by) || byText(a.field.name, b.field.name))
    .map(({ field }) => field);
  return { columns, groups: grouped(ordered, sort === 'farm' || sort === 'crop' ? key[sort] : null), shown: ordered.length };
}

function grouped(fields: readonly WeekField[], title: ((field: WeekField) => string) | null): WeekGroup[] {
  if (!title) return fields.length > 0 ? [{ title: null, fields }] : [];
  const groups = new Map<string, WeekField[]>();
  for (const field of fields) groups.set(title(field), [...(groups.get(title(field)) ?? []), field]);
  return [...groups].map(([name, members]) => ({ title: name, fields: members }));
}

/** How many cells say each verb, under the filters other than the verb's own. */
export function countVerbs(view: WeekView, search: WeekSearch): ReadonlyMap<Verb, number> {
  const { columns, groups } = selectWeek(view, { ...search, verb: undefined });
  const counts = new Map<Verb, number>();
  for (const { fields } of groups)
    for (const field of fields)
      for (const { advice } of cellsOf(field, columns)) counts.set(advice.verb, (counts.get(advice.verb) ?? 0) + 1);
  return counts;
}

/**
 * The scales of the week's small lines: one season across them all, and upward one scale for each insect and trap
 * design, because designs do not catch alike.
 */
export function lineScales(view: WeekView): (insect: number, line: SeasonLine) => LineScale {
  const top = new Map<string, number>();
  let from = day(view.on) - 1;
  for (const field of view.fields)
    field.cells.forEach(({ line }, insect) => {
      if (!line) return;
      from = Math.min(from, day(line.from));
      const key = `${insect}|${line.design}`;
      const rates = line.points.map((point) => point.perNight ?? 0);
      top.set(key, Math.max(top.get(key) ?? 0, line.thresholdPerNight ?? 0, ...rates));
    });
  const to = day(view.on);
  const months = monthTicks(from, to).map(({ at }) => at);
  return (insect, line) => ({ from, to, top: top.get(`${insect}|${line.design}`)!, months });
}

export const cellKey = (fieldId: string, insect: string) => `${fieldId}~${insect}`;
