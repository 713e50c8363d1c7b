import { celsius, fromCelsius, normalSchema, type RecordOf, type TemperatureUnit } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { FormFoot } from '../../shared/record/FormFoot.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { typedFigure } from '../../shared/record/typed-figure.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { flightsWords } from '../../text/flights.ts';
import { locale } from '../../text/language.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Table } from '../../ui/table/Table.tsx';

const w = flightsWords.normals;
const MONTH_NAME = new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' });
const MONTHS = Array.from({ length: 12 }, (_, i) => MONTH_NAME.format(Date.UTC(2001, i, 15)));

interface Boxes {
  readonly low: string;
  readonly high: string;
}

/** The twelve months as records; or what to mend. */
export function readNormals(
  boxes: readonly Boxes[],
  { sourceId, unit }: { readonly sourceId: string; readonly unit: TemperatureUnit },
): readonly RecordOf<'normals'>[] | string {
  const records: RecordOf<'normals'>[] = [];
  for (const [i, { low, high }] of boxes.entries()) {
    if (low.trim() === '' || high.trim() === '') return w.missing(MONTHS[i]!);
    const [tmin, tmax] = [typedFigure(low), typedFigure(high)];
    const read = normalSchema.safeParse({ sourceId, month: i + 1, tminC: celsius(tmin, unit), tmaxC: celsius(tmax, unit) });
    if (!read.success || !(tmin <= tmax)) return w.half(MONTHS[i]!);
    records.push(read.data);
  }
  return records;
}

const shown = (valueC: number, unit: TemperatureUnit) => String(Number(fromCelsius(valueC, unit).toFixed(1)));

/** Monthly means of a weather source that has too few years of its own, typed from what its service publishes. */
export function NormalsForm({ source, unit, close }: { source: string; unit: TemperatureUnit; close: () => void }) {
  const { data } = useQuery(recordsQuery('normals'));
  const say = useWriteRecords();
  const [typed, type] = useState<ReadonlyMap<number, Partial<Boxes>>>(new Map());
  const [fault, setFault] = useState<string | null>(null);
  const known = new Map((data ?? []).filter(({ value }) => value.sourceId === source).map((each) => [each.value.month, each]));
  const boxes = MONTHS.map((_, i): Boxes => {
    const held = known.get(i + 1)?.value;
    const kept = { low: held ? shown(held.tminC, unit) : '', high: held ? shown(held.tmaxC, unit) : '' };
    return { ...kept, ...typed.get(i) };
  });
  const change = (index: number, part: Partial<Boxes>) =>
    type((before) => new Map([...before, [index, { ...before.get(index), ...part }]]));
  const save = async () => {
    const read = readNormals(boxes, { sourceId: source, unit });
    if (typeof read === 'string') return setFault(read);
    const changes = read
      // What was not typed anew keeps the figures it has, unrounded.
      .filter(({ month }) => typed.has(month - 1) || !known.has(month))
      .map((value) => {
        const held = known.get(value.month);
        const base = held ? { recordId: held.recordId, revisionId: held.revisionId } : null;
        return { kind: 'normals' as const, value, base, before: held?.value ?? null };
      });
    if (changes.length === 0 || (await say(w.saved, ...changes))) close();
  };
  return (
    <Panel title={w.title} close={close}>
      <form
        className="record-form forecast-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <p>{w.explain(source)}</p>
        <Table
          label={w.title}
          fixed
          takeAlong={false}
          rows={boxes.map((each, index) => ({ ...each, index, name: MONTHS[index]! }))}
          keyOf={({ name }) => name}
          columns={[
            { head: w.month, cell: ({ name }) => name, names: true },
            {
              head: w.low(`°${unit}`),
              cell: ({ name, low, index }) => (
                <input
                  inputMode="decimal"
                  aria-label={w.lowOf(name, `°${unit}`)}
                  value={low}
                  onChange={({ target }) => change(index, { low: target.value })}
                />
              ),
            },
            {
              head: w.high(`°${unit}`),
              cell: ({ name, high, index }) => (
                <input
                  inputMode="decimal"
                  aria-label={w.highOf(name, `°${unit}`)}
                  value={high}
                  onChange={({ target }) => change(index, { high: target.value })}
                />
              ),
            },
          ]}
        />
        <FormFoot save={w.save} close={close} status={fault} />
      </form>
    </Panel>
  );
}
