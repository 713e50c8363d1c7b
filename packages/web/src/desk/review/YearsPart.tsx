import { modelById, type TrapDesign, type YearLine, type YearsView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { programQuery } from '../../api/queries.ts';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { shortDate } from '../../format/day.ts';
import { intervalText, percentText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { learnWords } from '../../text/learn.ts';
import { insectName, localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { yearsQuery } from './queries.ts';
import type { LearnSearch } from './search.ts';
import { Working } from './Working.tsx';
import { YearsChart } from './YearsChart.tsx';

const w = learnWords.years;

function modelName(id: string): string {
  const model = modelById(id);
  return model ? localName(model.name) : id;
}

export function YearsPart(props: { search: LearnSearch; change: (part: Partial<LearnSearch>) => void }) {
  const { search, change } = props;
  const { data: program } = useQuery(programQuery);
  const insect = search.insect ?? program?.insects[0];
  const { data, error, refetch } = useQuery({
    ...yearsQuery(search.on, insect ?? '', search.farm),
    enabled: insect !== undefined,
  });
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (program && insect === undefined) return <p className="not-yet">{learnWords.empty.text}</p>;
  if (!data || !program) return <Working />;
  const axis = search.axis === 'heat' && data.heat ? 'heat' : 'calendar';
  return (
    <>
      <p className="lead">{w.lead}</p>
      <div className="learn-tools">
        <label>
          {w.insect}
          <select value={insect} onChange={(event) => change({ insect: event.currentTarget.value })}>
            {program.insects.map((each) => (
              <option key={each} value={each}>
                {insectName(each)}
              </option>
            ))}
          </select>
        </label>
        {program.farms.length > 1 && (
          <label>
            {w.farm}
            <select value={search.farm ?? ''} onChange={(event) => change({ farm: event.currentTarget.value || undefined })}>
              <option value="">{w.allFarms}</option>
              {program.farms.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
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
  const rows = view.lines
    .filter((line) => line.design === design)
    .flatMap((line: YearLine) =>
      line.points
        .filter(({ perNight }) => perNight !== null)
        .map((point) => [
          `${line.year}`,
          shortDate(point.from),
          shortDate(point.to),
          rateText(point.perNight!),
          point.low === null || point.high === null ? '–' : intervalText(point.low, point.high),
          point.heatTo === null || !view.heat ? '–' : heatText(point.heatTo, view.heat.rule.unit, unit),
          point.shareSoFar === null ? '–' : percentText(point.shareSoFar),
        ]),
    );
  return (
    <Folded
      title={learnWords.behind}
      of={`${insectName(view.insect)}, ${wording.design[design]}`}
      columns={[
        { head: c.year },
        { head: c.from },
        { head: c.to },
        { head: c.rate, number: true },
        { head: c.interval, number: true },
        { head: c.heat, number: true },
        { head: c.share, number: true },
      ]}
      rows={rows}
    />
  );
}
