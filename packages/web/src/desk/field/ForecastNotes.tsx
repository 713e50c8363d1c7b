import { FORECAST_SKILL, type ForecastView } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { countText, percentText } from '../../format/number.ts';
import { flightsWords } from '../../text/flights.ts';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';

const w = flightsWords.forecast;
const { figures, series, from, to, source } = FORECAST_SKILL;
const inUse = figures.filter(({ set }) => set === 'earlier-years').map(({ coverage }) => coverage);
const FEW_YEARS = 3;

/** What the dates to come rest on. */
export function ForecastNotes({ forecast }: { forecast: ForecastView }) {
  const years = forecast.events.map(({ begins }) => begins).filter(({ method }) => method === 'past-years');
  if (forecast.events.length === 0) return null;
  return (
    <p className="basis">
      {forecast.forecastThrough === null ? w.ownNone : w.own(dayText(forecast.forecastThrough))}
      {years.some((dates) => dates.years <= FEW_YEARS) &&
        ` ${w.few(percentText(Math.min(...inUse)), percentText(Math.max(...inUse)))}`}
    </p>
  );
}

/** The hindcasts' own figures. */
export function SkillTable({ of }: { of: string }) {
  return (
    <FoldedTable
      title={w.skill}
      of={of}
      note={w.skillSource(series, from, to, source)}
      rows={figures}
      keyOf={({ set, leadDays }) => `${set}|${leadDays}`}
      columns={[
        { head: w.columns.set, value: ({ set }) => w.sets[set] },
        { head: w.columns.lead, value: ({ leadDays }) => leadDays, number: true },
        { head: w.columns.cases, value: ({ cases }) => cases, cell: ({ cases }) => countText(cases), number: true },
        {
          head: w.columns.coverage,
          value: ({ coverage }) => coverage,
          cell: ({ coverage }) => percentText(coverage),
          number: true,
        },
        {
          head: w.columns.width,
          value: ({ widthDays }) => widthDays,
          cell: ({ widthDays }) => widthDays ?? w.open,
          number: true,
        },
        { head: w.columns.error, value: ({ medianErrorDays }) => medianErrorDays, number: true },
      ]}
    />
  );
}
