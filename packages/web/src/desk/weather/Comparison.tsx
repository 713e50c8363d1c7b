import { fromCelsius, type IsoDay, type TemperatureUnit, type WeatherComparison, type WeatherSourcesView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom } from '../../format/day.ts';
import { weatherWords } from '../../text/weather.ts';
import { Field } from '../../ui/Field.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { comparisonQuery } from './queries.ts';

const w = weatherWords.compare;

/** How far two sources lie apart: before one is trusted to stand in for the other. */
export function Comparison({ sources, on }: { sources: WeatherSourcesView['sources']; on: IsoDay | undefined }) {
  const ids = sources.map(({ sourceId }) => sourceId);
  const filled = sources.find(({ fillFrom }) => fillFrom !== null);
  const [first, setFirst] = useState(filled?.sourceId ?? ids[0]!);
  const [second, setSecond] = useState(filled?.fillFrom ?? ids[1]!);
  const { data } = useQuery(comparisonQuery(first, second, on));
  const choices = [
    [w.first, first, setFirst],
    [w.second, second, setSecond],
  ] as const;
  return (
    <section className="weather-compare">
      <h2>{w.title}</h2>
      <p className="key">{w.text}</p>
      <div className="filters">
        {choices.map(([label, chosen, choose]) => (
          <Field key={label} label={label}>
            {(box) => (
              <select {...box} value={chosen} onChange={({ target }) => choose(target.value)}>
                {ids.map((id) => (
                  <option key={id}>{id}</option>
                ))}
              </select>
            )}
          </Field>
        ))}
      </div>
      {data && <Apart compared={data} />}
    </section>
  );
}

function Apart({ compared: { days, from, to, tmin, tmax, on } }: { compared: WeatherComparison }) {
  const [unit] = useTemperatureUnit();
  if (from === null || to === null || tmin === null || tmax === null) return <p role="status">{w.none}</p>;
  const rows = [
    { of: w.low, ...tmin },
    { of: w.high, ...tmax },
  ];
  return (
    <>
      <p role="status">{w.days(days, dayTextFrom(from, on), dayTextFrom(to, on))}</p>
      <Table
        label={w.title}
        fixed
        rows={rows}
        keyOf={({ of }) => of}
        columns={[
          { head: w.of, cell: ({ of }) => of, names: true },
          { head: w.mean, cell: ({ mean }) => apart(mean, unit), number: true },
          { head: w.meanAbsolute, cell: ({ meanAbsolute }) => apart(meanAbsolute, unit), number: true },
          { head: w.most, cell: ({ most, mostOn }) => w.on(apart(most, unit), dayTextFrom(mostOn, on)), number: true },
        ]}
      />
    </>
  );
}

/** A difference of temperatures: its scale has no zero of its own. */
const apart = (differenceC: number, unit: TemperatureUnit): string => {
  const difference = fromCelsius(differenceC, unit) - fromCelsius(0, unit);
  return `${difference.toFixed(1).replace('-', '−')} °${unit}`;
};
