import type { EffectOnAdvice, PlanDeviation, SeasonTruthLine, SeasonTruthView, SeasonView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { dayText } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { List } from './List.tsx';
import { seasonTruthQuery } from './queries.ts';

/** Mid-season truth: what went otherwise than planned, and what that does to the advice. */
export function TruthPart({ view, on }: { view: SeasonView; on: string | undefined }) {
  const { data, error, refetch } = useQuery(seasonTruthQuery(view.season, on));
  const w = seasonWords.truth;
  if (view.state === 'ahead') return <p className="absent">{w.ahead}</p>;
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <div className="skeleton skeleton-field" aria-hidden="true" />;
  return <Truth truth={data} />;
}

function Truth({ truth }: { truth: SeasonTruthView }) {
  const w = seasonWords.truth;
  const say = useDeviation();
  const off = truth.lines
    .filter(({ deviations }) => deviations.length > 0)
    .sort((a, b) => b.effects.length - a.effects.length || b.deviations.length - a.deviations.length);
  const rest = truth.lines.length - off.length;
  return (
    <>
      <p className="season-lead">
        {w.lead(dayText(truth.today))} {off.length === 0 ? w.none : rest > 0 && w.asPlanned(rest)}
      </p>
      {off.map((line) => (
        <Line key={line.id} line={line} />
      ))}
      <List
        name={`${seasonWords.parts.truth}, ${truth.season}`}
        head={[seasonWords.plan.insects, seasonWords.plan.farm, seasonWords.plan.area, w.happened, w.effect]}
        rows={off.map((line) => [
          insectName(line.insect),
          line.farm,
          fieldsOf(line),
          line.deviations.map(say).join('; '),
          line.effects.map(effectText).join('; '),
        ])}
      />
    </>
  );
}

const fieldsOf = ({ fields }: SeasonTruthLine) => fields.map(({ name }) => name).join(' + ');

function Line({ line }: { line: SeasonTruthLine }) {
  const w = seasonWords.truth;
  const wording = useWording();
  const say = useDeviation();
  return (
    <section className="truth-line" aria-label={`${insectName(line.insect)}, ${fieldsOf(line)}`}>
      <h2>
        {insectName(line.insect)} <span>{fieldsOf(line)}</span>
        <small>{line.farm}</small>
      </h2>
      <div>
        <h3>{w.happened}</h3>
        <ul>
          {line.deviations.map((deviation) => (
            <li key={JSON.stringify(deviation)}>{say(deviation)}</li>
          ))}
          {line.checksMade !== null && <li className="absent">{w.made(percentText(line.checksMade))}</li>}
        </ul>
      </div>
      <div>
        <h3>{w.effect}</h3>
        {line.effects.length === 0 ? (
          <p className="absent">{w.noEffect}</p>
        ) : (
          <ul>
            {line.effects.map((effect) => (
              <li key={effect.kind} className="is-due">
                {effectText(effect)}
              </li>
            ))}
          </ul>
        )}
      </div>
      <div>
        <h3>{w.now}</h3>
        <ul>
          {line.advice.map(({ field, name, verb }) => (
            <li key={field}>
              <Link to="/fields/$fieldId" params={{ fieldId: field }}>
                {name}
              </Link>
              : {wording.verb[verb]}
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

function useDeviation(): (deviation: PlanDeviation) => string {
  const w = seasonWords.truth;
  const wording = useWording();
  return (deviation) => {
    switch (deviation.kind) {
      case 'hung-late': {
        const said = w.hungLate(deviation.trapId, deviation.daysLate);
        return deviation.firstVisitCaught ? `${said}, ${w.caughtAtOnce}` : said;
      }
      case 'not-hung':
        return w.notHung(deviation.missing, deviation.daysLate);
      case 'other-design':
        return w.otherDesign(
          deviation.trapId,
          (wording.design as Readonly<Record<string, string>>)[deviation.design] ?? deviation.design,
        );
      case 'missed-checks':
        return w.missedChecks(deviation.trapId, deviation.days.length, deviation.planned);
      case 'lure-overdue':
        return w.lureOverdue(deviation.trapId, deviation.days);
      case 'lure-unknown':
        return w.lureUnknown(deviation.trapId);
      case 'fewer-traps':
        return w.fewerTraps(deviation.telling, deviation.planned);
    }
  };
}

function effectText(effect: EffectOnAdvice): string {
  const w = seasonWords.truth;
  return effect.kind === 'risks-grown'
    ? w.risksGrown(percentText(effect.planned.missed), percentText(effect.now.missed))
    : w.effects[effect.kind];
}
