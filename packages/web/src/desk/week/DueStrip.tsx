import { type DueField, type DueTrap, daysLateOn, type WeekView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { type ReactNode, startTransition, useEffect, useState } from 'react';
import { dayText } from '../../format/day.ts';
import { AnswerButton, useMayAnswer } from '../../shared/record/AnswerButton.tsx';
import { skippedText } from '../../shared/traps/skipped.ts';
import { words } from '../../text/index.ts';
import { shortInsect } from '../../text/names.ts';
import { thisWeekWords as t } from '../../text/this-week.ts';
import { Folded } from '../../ui/Folded.tsx';
import { useOnPaper, useWide } from '../../ui/media.ts';

type Kind = 'decisions' | 'scouting' | 'checks' | 'lures';

/** On a phone only decisions stand open, so that the fields are not pushed away. */
const FIRST_NARROW: Readonly<Record<Kind, number>> = { decisions: 3, scouting: 0, checks: 0, lures: 0 };
/** A county's lists stand whole; of a state's the rest is drawn when it is asked for. */
const FIRST_WIDE = 24;
/** Of long lists so many are there from the first moment; the others follow once the page stands. */
const AT_ONCE = 12;
/** Px of one item, until it is there. */
const USUAL_ITEM = 22;

interface Item {
  readonly key: string;
  readonly late?: boolean;
  readonly node: ReactNode;
}

/** What the day asks for, whole: decisions with the latest first, scouting, then traps and lures by station. */
export function DueStrip({ view, on }: { view: WeekView; on: string | undefined }) {
  const { decisions, scouting, checks, lures } = view.due;
  const mayAnswer = useMayAnswer();
  const answers = on === undefined && mayAnswer('decide');
  const crops = new Map(view.fields.map((field) => [field.fieldId, field]));
  const fieldItem = (due: DueField): Item => {
    const days = daysLateOn(view.on, due.dueSince);
    const { crop, growthHabit } = crops.get(due.fieldId) ?? {};
    const verb = due.verb === 'decide' ? 'decide' : 'scout';
    return {
      key: `${due.fieldId}|${due.insect}`,
      late: days > 0 && verb === 'decide',
      node: (
        <>
          <span className="due-field">
            <Link to="/fields/$fieldId" params={{ fieldId: due.fieldId }} search={{ on }} hash={due.insect}>
              {due.name}
            </Link>{' '}
            <span className="due-what">
              {due.farm} · {shortInsect(due.insect)}
            </span>
          </span>
          <span className="due-when">{whenDue(view.on, due, days)}</span>
          {answers && verb === 'decide' && (
            <AnswerButton
              className="due-answer"
              asked={{
                field: { fieldId: due.fieldId, name: due.name, ...(crop && { crop, growthHabit: growthHabit ?? null }) },
                insect: due.insect,
                verb,
                on: view.on,
              }}
            />
          )}
        </>
      ),
    };
  };
  return (
    <section className="due" aria-label={words.week.dueTitle}>
      <DueColumn kind="decisions" count={decisions.length} items={decisions.map(fieldItem)} />
      <div className="due-stations">
        <DueColumn kind="checks" count={checks.length} items={byStation(checks).map((each) => stationItem(each, on))} />
        <DueColumn kind="lures" count={lures.length} items={byStation(lures).map((each) => stationItem(each, on))} />
        {on === undefined && checks.length + lures.length > 0 && (
          <p className="due-foot no-print">
            <Link to="/round">{t.startRound}</Link>
          </p>
        )}
      </div>
      <DueColumn kind="scouting" count={fieldsOf(scouting)} items={scouting.map(fieldItem)} />
    </section>
  );
}

/** One field may be looked at for several insects on one walk. */
const fieldsOf = (due: readonly DueField[]): number => new Set(due.map(({ fieldId }) => fieldId)).size;

/** How late and since when nobody answered, or by when. */
function whenDue(on: string, { by, dueSince, verb }: DueField, days: number): string {
  if (days > 0) return (verb === 'decide' ? t.unanswered : t.dueSince)(days, dayText(dueSince!));
  if (by === null) return '';
  return by <= on ? t.byToday : t.by(dayText(by));
}

interface AtStation {
  readonly station: string;
  readonly traps: readonly DueTrap[];
}

/** The traps of one station together, in the order they come. */
function byStation(traps: readonly DueTrap[]): AtStation[] {
  const stations = new Map<string, DueTrap[]>();
  for (const trap of traps) {
    const there = stations.get(trap.station);
    if (there) there.push(trap);
    else stations.set(trap.station, [trap]);
  }
  return [...stations].map(([station, there]) => ({ station, traps: there }));
}

function whyDue({ why, daysLate, skipped }: DueTrap): string {
  const said = t.checkWhy[why];
  const due = typeof said === 'string' ? said : said(daysLate);
  return skipped ? `${due}, ${skippedText(skipped)}` : due;
}

function stationItem({ station, traps }: AtStation, on: string | undefined): Item {
  const [first] = traps;
  const alike = traps.every((trap) => whyDue(trap) === whyDue(first!));
  return {
    key: station,
    node: (
      <>
        <span className="due-field">
          <b>{station}</b>{' '}
          <span className="due-what">
            {traps.map((trap, index) => (
              <span key={trap.trapId}>
                {index > 0 && ', '}
                <Link to="/traps/$trapId" params={{ trapId: trap.trapId }} search={{ on }}>
                  {shortInsect(trap.insect)}
                </Link>
                {!alike && ` (${whyDue(trap)})`}
              </span>
            ))}
          </span>
        </span>
        {alike && <span className="due-when">{whyDue(first!)}</span>}
      </>
    ),
  };
}

function DueColumn({ kind, count, items }: { kind: Kind; count: number; items: readonly Item[] }) {
  const w = words.week;
  const wide = useWide();
  const paper = useOnPaper();
  const [number, ...rest] = w[kind](count).split(' ');
  const title = (
    <h2>
      <strong>{number}</strong> {rest.join(' ')}
    </h2>
  );
  const [stands, setStands] = useState(false);
  useEffect(() => startTransition(() => setStands(true)), []);
  const first = paper ? items.length : wide ? FIRST_WIDE : FIRST_NARROW[kind];
  const shown = items.slice(0, first);
  const now = stands || paper ? shown : shown.slice(0, AT_ONCE);
  const folded = items.slice(first);
  return (
    <div className={`due-column due-${kind}${items.length === 0 ? ' due-nothing' : ''}`}>
      {(first > 0 || items.length === 0) && title}
      {items.length === 0 && <p>{w.nothing[kind]}</p>}
      <ItemList items={now} />
      {now.length < shown.length && <div style={{ height: (shown.length - now.length) * USUAL_ITEM }} />}
      {folded.length > 0 && (
        <Folded title={first > 0 ? w.andMore(folded.length) : title}>
          <ItemList items={folded} />
        </Folded>
      )}
    </div>
  );
}

const ItemList = ({ items }: { items: readonly Item[] }) =>
  items.length > 0 && (
    <ul>
      {items.map(({ key, late, node }) => (
        <li key={key} className={late ? 'due-late' : undefined}>
          {node}
        </li>
      ))}
    </ul>
  );
