/** This week, as it is filtered, to paste into a message or a spreadsheet. */
import type { WeekView, Wording } from '@duskwatch/core';
import { longDay } from '../../format/day.ts';
import { words } from '../../text/index.ts';
import { localName } from '../../text/names.ts';
import { asCsv } from '../../ui/table/cells.ts';
import type { WeekSelection } from './select.ts';

const rows = ({ groups, columns }: WeekSelection) =>
  groups
    .flatMap(({ fields, folded }) => [...fields, ...folded])
    .flatMap((field) => columns.map(({ insect, index }) => ({ field, insect, advice: field.cells[index]!.advice })))
    .filter(({ advice }) => advice.verb !== 'none');

export function weekAsText(view: WeekView, selection: WeekSelection, wording: Wording): string {
  const { name, invented } = view.program;
  const head = `${name}${invented ? ` (${words.app.invented})` : ''}, ${longDay(view.on)}`;
  const lines = rows(selection).map(({ field, insect, advice }) => {
    const verb = [wording.verb[advice.verb], wording.when(advice)].filter(Boolean).join(' ');
    const said = [verb, wording.rate(advice)].filter(Boolean).join('; ');
    return `${field.farm}, ${field.name}: ${localName(insect.commonName)}: ${said}`;
  });
  return [head, ...lines].join('\n');
}

/** Plain numbers and ISO days: a spreadsheet reads them in any language. */
export function weekAsCsv(selection: WeekSelection): string {
  const h = words.week.csv;
  const head = [h.farm, h.field, h.crop, h.insect, h.verb, h.by, h.rate, h.low, h.high, h.confidence];
  const body = rows(selection).map(({ field, insect, advice }) => [
    field.farm,
    field.name,
    field.crop,
    insect.scientificName,
    advice.verb,
    advice.by,
    advice.rate,
    advice.interval?.[0] ?? null,
    advice.interval?.[1] ?? null,
    advice.confidence,
  ]);
  return asCsv(head, body);
}
