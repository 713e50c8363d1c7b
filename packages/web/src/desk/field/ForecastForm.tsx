import { celsius, type IsoDay, parseDay, type RecordOf, type TemperatureUnit, weatherSchema } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { shiftDay, shortDay } from '../../format/day.ts';
import { FormFoot } from '../../shared/record/FormFoot.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { typedFigure } from '../../shared/record/typed-figure.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { flightsWords } from '../../text/flights.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Table } from '../../ui/table/Table.tsx';

const w = flightsWords.forecast;
const DAYS = 7;

interface Boxes {
  readonly low: string;
  readonly high: string;
}

/** The days that are filled in, as records; or what to mend. */
export function readForecast(
  boxes: readonly Boxes[],
  first: IsoDay,
  { sourceId, madeOn, unit }: { sourceId: string; madeOn: IsoDay; unit: TemperatureUnit },
): readonly RecordOf<'weather'>[] | string {
  const filled = boxes.map(({ low, high }) => low.trim() !== '' || high.trim() !== '');
  const days = filled.lastIndexOf(true) + 1;
  if (days === 0) return w.nothing;
  if (filled.slice(0, days).includes(false)) return w.gap;
  const records: RecordOf<'weather'>[] = [];
  for (let i = 0; i < days; i++) {
    const [low, high] = [typedFigure(boxes[i]!.low), typedFigure(boxes[i]!.high)];
    const record = { sourceId, date: shiftDay(first, i), precipitationMm: null, forecastMadeOn: madeOn };
    const read = weatherSchema.safeParse({ ...record, tminC: celsius(low, unit), tmaxC: celsius(high, unit) });
    if (!read.success || !(low <= high)) return w.half;
    records.push(read.data);
  }
  return records;
}

/** A week of temperatures to come, written down as weather records that say they were forecast. */
export function ForecastForm(props: { source: string; on: IsoDay; unit: TemperatureUnit; close: () => void }) {
  const { source, on, unit, close } = props;
  const { data } = useQuery(recordsQuery('weather'));
  const say = useWriteRecords();
  const [boxes, setBoxes] = useState<readonly Boxes[]>(() => Array.from({ length: DAYS }, () => ({ low: '', high: '' })));
  const [fault, setFault] = useState<string | null>(null);
  const known = new Map((data ?? []).filter(({ value }) => value.sourceId === source).map((each) => [each.value.date, each]));
  const measured = [...known.values()].filter(({ value }) => (value.forecastMadeOn ?? null) === null && value.tmaxC !== null);
  const newest = measured
    .map(({ value }) => value.date)
    .filter((date) => date <= on)
    .sort()
    .at(-1);
  const first = newest !== undefined && parseDay(newest) !== null ? shiftDay(newest, 1) : on;
  const change = (index: number, part: Partial<Boxes>) =>
    setBoxes((before) => before.map((each, i) => (i === index ? { ...each, ...part } : each)));
  const save = async () => {
    // A forecast for days that have begun was made before them.
    const [madeOn] = [first, on].sort() as [IsoDay, IsoDay];
    const read = readForecast(boxes, first, { sourceId: source, madeOn, unit });
    if (typeof read === 'string') return setFault(read);
    const changes = read.map((value) => {
      const held = known.get(value.date);
      const base = held ? { recordId: held.recordId, revisionId: held.revisionId } : null;
      return { kind: 'weather' as const, value, base, before: held?.value ?? null };
    });
    if (await say(w.saved(read.length), ...changes)) close();
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
          rows={boxes.map((each, index) => ({ ...each, index, name: shortDay(shiftDay(first, index)) }))}
          keyOf={({ name }) => name}
          columns={[
            { head: w.day, cell: ({ name }) => name, names: true },
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
