import { Link } from '@tanstack/react-router';
import { daySpan } from '../../format/day.ts';
import { EvidencePanel } from '../../shared/advice/EvidencePanel.tsx';
import { words } from '../../text/index.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { FlightsPanel } from './FlightsPanel.tsx';
import { SkillTable } from './ForecastNotes.tsx';
import { LarvaePanel } from './LarvaePanel.tsx';
import { SeasonChart, type SeasonChartProps } from './SeasonChart.tsx';
import { ActsTable, ChecksTable, EarlierTable, HeatTable, RateTable } from './tables.tsx';

const isDrawn = ({ lines, traps, heat, samples, treatments }: SeasonChartProps['insect']) =>
  [lines, traps, heat, samples, treatments].some((each) => each.length > 0);

/** One insect on one field: the verb, the season, the numbers behind it, the evidence. */
export function InsectSeason(props: SeasonChartProps) {
  const { insect } = props;
  const { advice } = insect;
  const wording = useWording();
  const name = localName(insect.insect.commonName);
  return (
    <section className={`insect verb-${advice.verb}`} id={insect.insect.id} aria-labelledby={`${insect.insect.id}-name`}>
      <div className="insect-head">
        <h2 id={`${insect.insect.id}-name`}>
          {localName(insect.insect.commonName)} <i>{insect.insect.scientificName}</i>
        </h2>
        <p className="insect-verb">
          <b className="verb-word">{wording.verb[advice.verb]}</b> {wording.when(advice)}
        </p>
        <p className="insect-sentence">
          {wording.headline(advice)} {advice.verb === 'blind' && advice.because[0] && wording.evidence(advice.because[0])}
        </p>
      </div>
      <div className="insect-body">
        {insect.lines.length === 0 && <p className="absent">{words.field.noLine}</p>}
        {isDrawn(insect) && <SeasonChart {...props} />}
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
          <ActsTable fieldId={props.view.field.fieldId} insect={insect} />
        </div>
        <h3 className="unseen">{words.field.evidence}</h3>
        <EvidencePanel
          advice={advice}
          foot={
            advice.verb !== 'none' && (
              <Link
                to="/fields/$fieldId/scouting/$insect"
                params={{ fieldId: props.view.field.fieldId, insect: insect.insect.id }}
              >
                {words.evidence.scouting}
              </Link>
            )
          }
        />
      </div>
    </section>
  );
}
