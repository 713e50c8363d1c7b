import { modelById, type TrapDesign, type YearLine, type YearsView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { programQuery } from '../../api/queries.ts';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { shortDate } from '../../format/day.ts';
import { intervalText, percentText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { insectName, localName } from '../../text/names.ts';
import { reviewWords } from '../../text/review.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';
import { yearsQuery } from './queries.ts';
import type { ReviewSearch } from './search.ts';
import { Working } from './Working.tsx';
import { YearsChart } from './YearsChart.tsx';

const w = reviewWords.years;

function modelName(id: string): string {
  const model = modelById(id);
  return model ? localName(model.name) : id;
}

export function YearsPart(props: { search: ReviewSearch; change: (part: Partial<ReviewSearch>) => void }) {
  const { search, change } = props;
  const { data: program } = useQuery(programQuery);
  const insect = search.insect ?? program?.insects[0];
  const { data, error, refetch } = useQuery({
    ...yearsQuery(search.on, insect ?? '', search.farm),
    enabled: insect !== undefined,
  });
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (program && insect === undefined) return <p className="not-yet">{reviewWords.empty.text}</p>;
  if (!data || !program) return <Working />;
  const axis = search.axis === 'heat' && data.heat ? 'heat' : 'calendar';
  return (
    <>
      <p className="lead">{w.lead}</p>
      <div className="review-tools">
        <SelectField
          label={w.insect}
          value={insect ?? ''}
          choices={program.insects.map((each) => [each, insectName(each)])}
          choose={(value) => change({ insect: value })}
        />
        {program.farms.length > 1 && (
          <SelectField
            label={w.farm}
            value={search.farm ?? ''}
            all={w.allFarms}
            choices={program.farms.map((each) => [each, each])}
            choose={(value) => change({ farm: value || undefined })}
          />
        )}
        {data.heat && (
          <fieldset className="choices">
            <legend>{w.axis}</legend>
            {(['calendar', 'heat'] as const).map((each) => (
              <label key={each}>
                <input
                  type="radio"
                  name="axis"
                  checked={axis === each}
                  onChange={() => change({ axis: each === 'heat' ? 'heat' : undefined })}
                />
                {w[each]}
              </label>
            ))}
          </fieldset>
        )}
      </div>
      {data.noHeat && <p className="key">{w.noHeat[data.noHeat]}</p>}
      {data.lines.length === 0 ? <p className="not-yet">{w.none}</p> : <Years view={data} axis={axis} />}
    </>
  );
}

function Years({ view, axis }: { view: YearsView; axis: 'calendar' | 'heat' }) {
  const wording = useWording();
  const [unit] = useTemperatureUnit();
  const designs = [...new Set(view.lines.map(({ design }) => design))];
  return (
    <>
      {designs.map((design) => (
        <section key={design} className="lesson">
          <h2>
            {insectName(view.insect)}, {wording.design[design]}
          </h2>
          <YearsChart lines={view.lines.filter((line) => line.design === design)} heat={view.heat} axis={axis} />
          <YearTable view={view} design={design} />
        </section>
      ))}
      <p className="key">
        {w.gaps} {axis === 'heat' && view.heat && w.heatAxis(`°${unit}`, modelName(view.heat.modelId))}
      </p>
    </>
  );
}

function YearTable({ view, design }: { view: YearsView; design: TrapDesign }) {
  const wording = useWording();
  const [unit] = useTemperatureUnit();
  const c = w.columns;
  const unitOf = view.heat?.rule.unit;
  const rows = view.lines
    .filter((line) => line.design === design)
    .flatMap(({ year, points }: YearLine) =>
      points.filter(({ perNight }) => perNight !== null).map((point) => ({ ...point, year })),
    );
  return (
    <FoldedTable
      title={reviewWords.behind}
      of={`${insectName(view.insect)}, ${wording.design[design]}`}
      rows={rows}
      keyOf={({ from }) => from}
      columns={[
        { head: c.year, value: ({ year }) => `${year}` },
        { head: c.from, value: ({ from }) => from, cell: ({ from }) => shortDate(from) },
        { head: c.to, value: ({ to }) => to, cell: ({ to }) => shortDate(to) },
        { head: c.rate, figure: [({ perNight }) => perNight, rateText] },
        {
          head: c.interval,
          said: ({ low, high }) => (low === null || high === null ? null : intervalText(low, high)),
          number: true,
        },
        {
          head: c.heat,
          figure: [({ heatTo }) => (unitOf === undefined ? null : heatTo), (heat) => heatText(heat, unitOf!, unit)],
        },
        { head: c.share, figure: [({ shareSoFar }) => shareSoFar, percentText] },
      ]}
    />
  );
}
