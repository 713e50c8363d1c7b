/** Which rows and columns of the week are shown, and in which order. */
import { day, type InsectName, type RateLine, type Verb, type WeekCell, type WeekField, type WeekView } from '@duskwatch/core';
import { VERBS } from '../../shared/advice/verbs.ts';
import { language } from '../../text/language.ts';
import { monthTicks } from '../../ui/chart/axis.ts';
import { groundPath, type LineScale } from './Sparkline.tsx';
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
  for (const field of fields) {
    const group = groups.get(title(field));
    if (group) group.push(field);
    else groups.set(title(field), [field]);
  }
  return [...groups].map(([name, members]) => ({ title: name, fields: members }));
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

/**
 * The scales of the week's small lines: one season across them all, and upward one scale for each insect and trap
 * design, because designs do not catch alike.
 */
export function lineScales(view: WeekView): (insect: number, line: RateLine) => LineScale {
  const top = new Map<string, number>();
  let first = view.on;
  for (const field of view.fields)
    field.cells.forEach(({ line }, insect) => {
      if (!line) return;
      if (line.from < first) first = line.from;
      const key = `${insect}|${line.design}`;
      let most = Math.max(top.get(key) ?? 0, line.thresholdPerNight ?? 0);
      for (const { perNight } of line.points) if (perNight !== null && perNight > most) most = perNight;
      top.set(key, most);
    });
  const to = day(view.on);
  const from = Math.min(day(first), to - 1);
  const months = monthTicks(from, to).map(({ at }) => at);
  const ground = groundPath(from, to, months);
  return (insect, line) => ({ from, to, top: top.get(`${insect}|${line.design}`)!, ground });
}

export const cellKey = (fieldId: string, insect: string) => `${fieldId}~${insect}`;
