import { celsius, fromCelsius, type IsoDay, type WeatherRecord, weatherSchema } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom } from '../../format/day.ts';
import { FormFoot } from '../../shared/record/FormFoot.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { typedFigure } from '../../shared/record/typed-figure.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { weatherWords } from '../../text/weather.ts';
import { Field } from '../../ui/Field.tsx';
import { Panel } from '../../ui/Panel.tsx';

const w = weatherWords.day;
const MM_PER_INCH = 25.4;

/** Conversions leave digits that nobody read. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;

/** A day's extremes read off a thermometer, in the units that the person reads. */
export function DayForm({ sourceId, on, close }: { sourceId: string; on: IsoDay; close: () => void }) {
  const [unit] = useTemperatureUnit();
  const rainUnit = unit === 'F' ? 'in' : 'mm';
  const { data } = useQuery(recordsQuery('weather'));
  const write = useWriteRecords();
  const [date, setDate] = useState(on);
  const [typed, type] = useState<Readonly<Record<'low' | 'high' | 'rain', string>>>({ low: '', high: '', rain: '' });
  const [fault, setFault] = useState<string | null>(null);
  const held = data?.find(({ value }) => value.sourceId === sourceId && value.date === date);
  const save = async () => {
    const [low, high, rain] = [typedFigure(typed.low), typedFigure(typed.high), typedFigure(typed.rain)];
    const value: WeatherRecord = {
      sourceId,
      date,
      tminC: tidy(celsius(low, unit)),
      tmaxC: tidy(celsius(high, unit)),
      precipitationMm: typed.rain.trim() === '' ? null : tidy(rain * (rainUnit === 'in' ? MM_PER_INCH : 1)),
    };
    if (!weatherSchema.safeParse(value).success || !(low <= high)) return setFault(w.wrong);
    const base = held ? { recordId: held.recordId, revisionId: held.revisionId } : null;
    if (await write(w.saved(dayTextFrom(date, on)), { kind: 'weather', value, base, before: held?.value ?? null })) close();
  };
  const boxes = [
    ['low', w.low(`°${unit}`), undefined],
    ['high', w.high(`°${unit}`), undefined],
    ['rain', w.rain(rainUnit), w.rainHint],
  ] as const;
  const before = held?.value;
  return (
    <Panel title={w.title(sourceId)} close={close}>
      <form
        className="record-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <Field label={w.date}>
          {(box) => <input {...box} type="date" value={date} max={on} onChange={({ target }) => setDate(target.value)} />}
        </Field>
        {boxes.map(([name, label, hint]) => (
          <Field key={name} label={label} hint={hint}>
            {(box) => (
              <input
                {...box}
                inputMode="decimal"
                autoComplete="off"
                value={typed[name]}
                onChange={({ target }) => type((all) => ({ ...all, [name]: target.value }))}
              />
            )}
          </Field>
        ))}
        {before && (
          <p className="replaces">
            {w.replaces}{' '}
            {before.tminC !== null && before.tmaxC !== null && `${shown(before.tminC)} – ${shown(before.tmaxC)} °${unit}`}
          </p>
        )}
        <FormFoot save={w.save} close={close} status={fault} />
      </form>
    </Panel>
  );

  function shown(valueC: number): string {
    return String(Number(fromCelsius(valueC, unit).toFixed(1)));
  }
}
