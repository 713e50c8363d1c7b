import { daySpan } from '../../format/day.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { words } from '../../text/index.ts';
import { localName } from '../../text/names.ts';
import { FieldEvidence } from './FieldEvidence.tsx';
import { FlightsPanel } from './FlightsPanel.tsx';
import { SkillTable } from './ForecastNotes.tsx';
import { LarvaePanel } from './LarvaePanel.tsx';
import { Legend } from './Legend.tsx';
import { SeasonChart, type SeasonChartProps } from './SeasonChart.tsx';
import { ActsTable, ChecksTable, EarlierTable, HeatTable, RateTable } from './tables.tsx';
import { Verdict } from './Verdict.tsx';

const isDrawn = ({ lines, traps, heat, samples, treatments }: SeasonChartProps['insect']) =>
  [lines, traps, heat, samples, treatments].some((each) => each.length > 0);

/** One insect on one field: what to do and why, its season, and beside it what all that rests on. */
export function InsectSeason({ past, ...props }: SeasonChartProps & { past: boolean }) {
  const { insect, view } = props;
  const name = localName(insect.insect.commonName);
  return (
    <section className="insect" data-insect={insect.insect.id} aria-label={name}>
      {/* The tab says it on the screen; paper has no tabs. */}
      <h2 className="insect-name unseen">
        {name} <i>{insect.insect.scientificName}</i>
      </h2>
      <Verdict view={view} insect={insect} past={past} />
      <div className="field-two">
        <div className="insect-body">
          {insect.lines.length === 0 && <p className="absent">{words.field.noLine}</p>}
          {isDrawn(insect) && (
            <>
              <Legend />
              <SeasonChart {...props} />
            </>
          )}
          {insect.heat.length === 0 && <p className="absent">{words.field.noHeat}</p>}
          {insect.heat.map(
            ({ gap, modelId }) =>
              gap && (
                <p key={modelId} className="absent">
                  {words.field.heatGap(daySpan(gap.from, gap.to))}
                </p>
              ),
          )}
          {props.flights && <FlightsPanel insect={props.flights} of={name} unit={props.unit} />}
          {props.flights?.larvae && <LarvaePanel larvae={props.flights.larvae} of={name} />}
          <h3 className="behinds-title">{fieldPageWords.tables}</h3>
          <div className="behinds">
            <RateTable insect={insect} />
            <EarlierTable insect={insect} />
            <ChecksTable insect={insect} />
            {insect.heat
              .filter((heat) => heat.days.length > 0)
              .map((heat) => (
                <HeatTable key={heat.modelId} insect={insect} heat={heat} />
              ))}
            {props.flights?.forecasts.some(({ events }) => events.length > 0) && <SkillTable of={name} />}
            <ActsTable fieldId={view.field.fieldId} insect={insect} />
          </div>
        </div>
        <FieldEvidence view={view} insect={insect} />
      </div>
    </section>
  );
}
