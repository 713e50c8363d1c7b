import { type DueField, type DueTrap, day, daysBetween, type IsoDay, type WeekView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { type ReactNode, useState } from 'react';
import { dayText } from '../../format/day.ts';
import { words } from '../../text/index.ts';
import { insectName } from '../../text/names.ts';
import { useWide } from '../../ui/media.ts';

/** How many of a column's items stand open: on a phone only decisions do, so that the fields are not pushed away. */
const FIRST = { wide: 2, narrow: { decisions: 3, scouting: 0, checks: 0, lures: 0 } } as const;

interface Item {
  readonly key: string;
  readonly node: ReactNode;
}

/** What the day asks for, in four columns: decisions, scouting, checks, lures. */
export function DueStrip({ view, on }: { view: WeekView; on: string | undefined }) {
  const w = words.week;
  const { decisions, scouting, checks, lures } = view.due;
  const field = (due: DueField): Item => ({
    key: `${due.fieldId}|${due.insect}`,
    node: (
      <>
        <Link to="/fields/$fieldId" params={{ fieldId: due.fieldId }} search={{ on }} hash={due.insect}>
          {due.name}
        </Link>{' '}
        {due.by && whenDue(due.by, due.dueSince)}
        <span className="due-what">
          {due.farm} · {insectName(due.insect)}
        </span>
      </>
    ),
  });
  const trapLink = ({ trapId, insect, fieldId }: DueTrap) => {
    if (fieldId === null) return <b>{trapId}</b>;
    return (
      <Link to="/fields/$fieldId" params={{ fieldId }} search={{ on }} hash={insect}>
        {trapId}
      </Link>
    );
  };
  const trap = (due: DueTrap): Item => ({
    key: `${due.trapId}|${due.why}`,
    node: (
      <>
        {trapLink(due)} {w.trapWhy[due.why]}, {w.late(due.daysLate)}
        <span className="due-what">
          {due.station} · {insectName(due.insect)}
        </span>
      </>
    ),
  });
  return (
    <section className="due" aria-label={w.dueTitle}>
      <DueColumn kind="decisions" items={decisions.map(field)} />
      <DueColumn kind="scouting" items={scouting.map(field)} />
      <DueColumn kind="checks" items={checks.map(trap)} />
      <DueColumn kind="lures" items={lures.map(trap)} />
    </section>
  );
}

/** `by Wed 15 July`, or how late it is. */
function whenDue(by: IsoDay, dueSince: IsoDay | null): string {
  const late = dueSince === null ? 0 : daysBetween(day(dueSince), day(by));
  return late > 0 ? words.week.late(late) : words.week.by(dayText(by));
}

function DueColumn({ kind, items }: { kind: keyof typeof FIRST.narrow; items: readonly Item[] }) {
  const w = words.week;
  const wide = useWide();
  const [number, ...rest] = w[kind](items.length).split(' ');
  const title = (
    <h2>
      <strong>{number}</strong> {rest.join(' ')}
    </h2>
  );
  const first = wide ? FIRST.wide : FIRST.narrow[kind];
  const folded = items.slice(first);
  const [unfolded, unfold] = useState(false);
  return (
    <div className={`due-column due-${kind}${items.length === 0 ? ' due-nothing' : ''}`}>
      {(first > 0 || items.length === 0) && title}
      {items.length === 0 && <p>{w.nothing[kind]}</p>}
      <ItemList items={items.slice(0, first)} />
      {folded.length > 0 && (
        <details onToggle={(event) => unfold(event.currentTarget.open)}>
          <summary>{first > 0 ? w.andMore(folded.length) : title}</summary>
          {unfolded && <ItemList items={folded} />}
        </details>
      )}
    </div>
  );
}

const ItemList = ({ items }: { items: readonly Item[] }) =>
  items.length > 0 && (
    <ul>
      {items.map((item) => (
        <li key={item.key}>{item.node}</li>
      ))}
    </ul>
  );
