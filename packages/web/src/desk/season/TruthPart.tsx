import {
  day,
  daysBetween,
  type IsoDay,
  type SeasonTruthLine,
  type SeasonTruthView,
  type SeasonView,
  type TruthCause,
} from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { dayText, shortDay } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { VERBS } from '../../shared/advice/verbs.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { useOnPaper, useWide } from '../../ui/media.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { seasonTruthQuery } from './queries.ts';
import { TruthAxis, TruthKey, TruthStrip, truthAxis } from './TruthStrip.tsx';

const w = seasonWords.truth;

/** What the season became of its plan: lines grouped by the gravest thing that went otherwise, each cause with one act. */
export function TruthPart({ view, on }: { view: SeasonView; on: string | undefined }) {
  const { data, error, refetch } = useQuery(seasonTruthQuery(view.season, on));
  if (view.state === 'ahead') return <p className="absent">{w.ahead}</p>;
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <div className="skeleton skeleton-field" aria-hidden="true" />;
  return <Truth truth={data} view={view} on={on} />;
}

type GroupBy = 'cause' | 'insect' | 'farm';
const CAUSES: readonly TruthCause[] = [
  'blind',
  'not-hung',
  'lure-spent',
  'checks-missed',
  'hung-late',
  'other-design',
  'not-telling',
  'as-planned',
];

const areaOf = ({ fields }: SeasonTruthLine) => fields.map(({ name }) => name).join(' + ');
/** How much likelier the rule is missed than planned; a line in the dark comes before all. */
const growth = ({ risk, cause }: SeasonTruthLine) =>
  cause === 'blind' ? 2 : risk.now === null || risk.planned === null ? -1 : risk.now - risk.planned;

function Truth({ truth, view, on }: { truth: SeasonTruthView; view: SeasonView; on: string | undefined }) {
  const [groupBy, choose] = useState<GroupBy>('cause');
  const [listing, list] = useState(false);
  const wide = useWide();
  const paper = useOnPaper();
  const wording = useWording();
  const groupOf = (line: SeasonTruthLine) => (groupBy === 'cause' ? line.cause : line[groupBy]);
  const lines = useMemo(
    () =>
      [...truth.lines].sort(
        (a, b) =>
          CAUSES.indexOf(a.cause) - CAUSES.indexOf(b.cause) || growth(b) - growth(a) || areaOf(a).localeCompare(areaOf(b)),
      ),
    [truth],
  );
  const axis = useMemo(() => truthAxis(truth, wide ? 320 : 300), [truth, wide]);
  const asPlanned = lines.filter(({ cause }) => cause === 'as-planned').length;
  return (
    <>
      <div className="truth-lead">
        <p className="season-lead">
          {asPlanned === lines.length ? w.none : w.lead(asPlanned, lines.length, dayText(truth.today))}
        </p>
        <SelectField
          label={w.groupBy}
          value={groupBy}
          choices={(['cause', 'insect', 'farm'] as const).map((each) => [each, w.groups[each]])}
          choose={(value) => choose((['cause', 'insect', 'farm'] as const).find((each) => each === value) ?? 'cause')}
        />
      </div>
      <TruthKey />
      <Table
        label={`${seasonWords.parts.truth}, ${truth.season}`}
        className="truth-lines"
        rows={lines}
        keyOf={({ id }) => id}
        groupOf={groupOf}
        groupHead={(group, members) =>
          groupBy === 'cause' ? (
            <CauseHead cause={CAUSES.find((each) => each === group)!} lines={members} list={() => list(true)} on={on} />
          ) : groupBy === 'insect' ? (
            insectName(group)
          ) : (
            group
          )
        }
        foldOf={(group, members) => (wide || paper || group === groupOf(lines[0]!) ? null : w.showAreas(members.length))}
        columns={[
          {
            head: w.columns.area,
            value: areaOf,
            cell: (line) => (
              <>
                {areaOf(line)} <small className="beside">{line.farm}</small>
              </>
            ),
            names: true,
          },
          { head: w.columns.insect, value: ({ insect }) => insectName(insect) },
          {
            head: w.columns.telling,
            value: ({ telling, planned }) => (telling === null ? null : telling - planned.traps),
            said: ({ telling, planned }) => (telling === null ? null : w.tellingOf(telling, planned.traps)),
            className: ({ telling, planned }) => (telling !== null && telling < planned.traps ? 'is-off' : undefined),
          },
          {
            head: w.columns.season,
            value: ({ traps, planned }) => traps[0]?.hungOn ?? planned.hangOn,
            said: (line) => happened(line).join('; '),
            cell: (line) => (
              <>
                <TruthStrip line={line} axis={axis} />
                <span className="unseen">{happened(line).join('; ')}</span>
              </>
            ),
            below: <TruthAxis axis={axis} />,
            className: 'season-strip',
          },
          {
            head: w.columns.checks,
            value: ({ checksMade }) => checksMade,
            said: ({ checksMade }) => (checksMade === null ? null : percentText(checksMade)),
            number: true,
            className: ({ checksMade }) => (checksMade !== null && checksMade < 0.85 ? 'is-off' : undefined),
          },
          {
            head: w.columns.risk,
            value: growth,
            said: riskText,
            cell: (line) => <Risk line={line} />,
          },
          {
            head: w.columns.now,
            value: ({ advice }) => Math.min(...advice.map(({ verb }) => VERBS.indexOf(verb)), VERBS.length),
            said: ({ advice }) => advice.map(({ name, verb }) => `${name}: ${wording.verb[verb]}`).join(', '),
            cell: (line) => <Advised line={line} today={truth.today} on={on} />,
          },
        ]}
      />
      {listing && <HangingList truth={truth} view={view} close={() => list(false)} />}
    </>
  );
}

/** How late it is, or its day. */
function whenShort({ by, dueSince }: SeasonTruthLine['advice'][number], today: IsoDay): string {
  const late = dueSince === null ? 0 : daysBetween(day(dueSince), day(today));
  if (late > 0) return w.late(late);
  return by === null ? '' : shortDay(by);
}

/** The mark of each field, which leads to it, and of the most pressing what it says. */
function Advised(props: { line: SeasonTruthLine; today: IsoDay; on: string | undefined }) {
  const { line, today, on } = props;
  const { advice, insect } = line;
  const wording = useWording();
  const ordered = [...advice].sort((a, b) => VERBS.indexOf(a.verb) - VERBS.indexOf(b.verb));
  const [first] = ordered;
  return (
    <span className="truth-advice">
      {ordered.map(({ field, name, verb }) => (
        <Link key={field} to="/fields/$fieldId" params={{ fieldId: field }} search={{ on }} hash={insect}>
          <VerbMark verb={verb} />
          <span className="unseen">
            {name}: {wording.verb[verb]}
          </span>
        </Link>
      ))}
      {first && (
        <span className={`verb-${first.verb}`} aria-hidden="true">
          <b className="verb-word">{first.verb === 'none' ? '—' : wording.verb[first.verb]}</b> {whenShort(first, today)}
        </span>
      )}
    </span>
  );
}

/** What went otherwise, in words: the picture of the line is not seen by all. */
function happened(line: SeasonTruthLine): string[] {
  return line.deviations.flatMap((deviation) => {
    switch (deviation.kind) {
      case 'hung-late': {
        const late = `${deviation.trapId}: ${w.late(deviation.daysLate)}`;
        return [deviation.firstVisitCaught ? `${late}, ${w.caught}` : late];
      }
      case 'not-hung':
        return [`${w.key.never}: ${deviation.missing}`];
      case 'other-design':
        return [w.otherDesign(deviation.trapId, deviation.design)];
      case 'missed-checks':
        return [`${deviation.trapId}: ${w.key.missed} ${w.checksOf(deviation.days.length, deviation.planned)}`];
      case 'lure-overdue':
        return [`${deviation.trapId}: ${w.past(deviation.days)}`];
      default:
        return [];
    }
  });
}

function riskText({ risk, cause }: SeasonTruthLine): string {
  if (risk.planned === null) return w.noRule;
  if (cause === 'blind' || risk.now === null) return w.risk(percentText(risk.planned), w.blind);
  return risk.now <= risk.planned ? percentText(risk.now) : w.risk(percentText(risk.planned), percentText(risk.now));
}

const RISK = { width: 64, height: 18, most: 0.4 };

/** Planned as a tick, now as a dot, on one scale for all lines. */
function Risk({ line }: { line: SeasonTruthLine }) {
  const { planned, now } = line.risk;
  const x = (share: number) => 4 + (Math.min(share, RISK.most) / RISK.most) * (RISK.width - 8);
  return (
    <span className="risk">
      <svg className="chart" width={RISK.width} height={RISK.height} aria-hidden="true">
        {planned !== null && <path className="risk-planned" d={`M${x(planned)},4v10`} />}
        {planned !== null && now !== null && <path className="risk-grown" d={`M${x(planned)},9H${x(now)}`} />}
        {now !== null && <circle className="dot" cx={x(now)} cy={9} r={3.4} />}
      </svg>
      <span className={planned === null ? 'absent' : undefined}>{riskText(line)}</span>
    </span>
  );
}

function CauseHead(props: { cause: TruthCause; lines: readonly SeasonTruthLine[]; list: () => void; on: string | undefined }) {
  const { cause, lines, list, on } = props;
  const { head, cost } = w.causes[cause];
  return (
    <div className="cause-head">
      <b>
        {head}: {w.areas(lines.length)}
      </b>
      <span className="cause-cost">{cause === 'not-hung' ? (grownText(lines) ?? cost) : cost}</span>
      {cause !== 'as-planned' && <Act cause={cause} lines={lines} list={list} on={on} />}
    </div>
  );
}

/** The middle of what the lines of a cause risk, as planned and now. */
function grownText(lines: readonly SeasonTruthLine[]): string | null {
  const known = lines.flatMap(({ risk: { planned, now } }) => (planned === null || now === null ? [] : [{ planned, now }]));
  if (known.length === 0) return null;
  const middle = (of: (one: (typeof known)[number]) => number) => known.map(of).sort((a, b) => a - b)[known.length >> 1]!;
  return w.riskGrown(percentText(middle(({ planned }) => planned)), percentText(middle(({ now }) => now)));
}

/** The one act that mends a cause. */
function Act(props: {
  cause: Exclude<TruthCause, 'as-planned'>;
  lines: readonly SeasonTruthLine[];
  list: () => void;
  on: string | undefined;
}) {
  const { cause, lines, list, on } = props;
  const sum = (of: (line: SeasonTruthLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  const hanging = sum(({ traps }) => traps.filter(({ takenDownOn }) => takenDownOn === null).length);
  switch (cause) {
    case 'not-hung':
      return (
        <button type="button" className="plain-button" onClick={list}>
          {w.acts[cause](sum(missingIn))}
        </button>
      );
    case 'blind':
    case 'not-telling':
      return (
        <Link to="/fields" search={{ on, state: 'due' }}>
          {w.acts[cause](hanging)}
        </Link>
      );
    case 'lure-spent':
      return (
        <Link to="/fields" search={{ on, state: 'due', sort: 'lure' }}>
          {w.acts[cause](sum(({ deviations }) => deviations.filter(({ kind }) => kind === 'lure-overdue').length))}
        </Link>
      );
    case 'checks-missed':
      return <Link to="/rounds">{w.acts[cause]()}</Link>;
    case 'hung-late':
      return (
        <Link to="/flights" search={{ on }}>
          {w.acts[cause]()}
        </Link>
      );
    case 'other-design':
      return (
        <Link to="/season" search={{ on }}>
          {w.acts[cause]()}
        </Link>
      );
  }
}

const missingIn = ({ deviations }: SeasonTruthLine): number =>
  deviations.reduce((sum, one) => sum + (one.kind === 'not-hung' ? one.missing : 0), 0);

/** What is still to be hung, to print, copy or save. */
function HangingList({ truth, view, close }: { truth: SeasonTruthView; view: SeasonView; close: () => void }) {
  const wording = useWording();
  const c = w.hanging;
  const rows = truth.lines.filter((line) => missingIn(line) > 0);
  const designOf = ({ id }: SeasonTruthLine) => {
    const design = view.lines.find((line) => line.id === id)?.design.design ?? null;
    return design === null ? null : wording.design[design];
  };
  return (
    <Panel title={w.hangingList} close={close}>
      <Table
        label={w.hangingList}
        rows={rows}
        keyOf={({ id }) => id}
        columns={[
          { head: c.area, value: areaOf, names: true },
          { head: c.farm, value: ({ farm }) => farm },
          { head: c.insect, value: ({ insect }) => insectName(insect) },
          { head: c.design, value: designOf },
          { head: c.traps, value: missingIn, number: true },
          {
            head: c.planned,
            value: ({ planned }) => planned.hangOn,
            cell: ({ planned: { hangOn } }) =>
              hangOn === null ? '–' : `${shortDay(hangOn)} (${w.late(Math.max(0, daysBetween(day(hangOn), day(truth.today))))})`,
          },
        ]}
      />
    </Panel>
  );
}
