import type { DueField, DueTrap, InsectName, WeekView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { dayText } from '../format/day.ts';
import { words } from '../words/index.ts';

const FIRST = 2;

interface Item {
  readonly key: string;
  readonly node: ReactNode;
}

/** What the day asks for, in four columns: decisions, scouting, checks, lures. */
export function DueStrip({ view, on }: { view: WeekView; on: string | undefined }) {
  const w = words.week;
  const { decisions, scouting, checks, lures } = view.due;
  const nameOf = (id: string) => view.insects.find((insect: InsectName) => insect.id === id)?.commonName.en ?? id;
  const field = (due: DueField): Item => ({
    key: `${due.fieldId}|${due.insect}`,
    node: (
      <>
        <Link to="/fields/$fieldId" params={{ fieldId: due.fieldId }} search={{ on }} hash={due.insect}>
          {due.name}
        </Link>{' '}
        {due.by && w.by(dayText(due.by))}
        <span className="due-what">
          {due.farm} · {nameOf(due.insect)}
        </span>
      </>
    ),
  });
  const trap = (due: DueTrap): Item => ({
    key: `${due.trapId}|${due.why}`,
    node: (
      <>
        <b>{due.trapId}</b> {w.trapWhy[due.why]}, {w.late(due.daysLate)}
        <span className="due-what">
          {due.station} · {nameOf(due.insect)}
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

function DueColumn({ kind, items }: { kind: 'decisions' | 'scouting' | 'checks' | 'lures'; items: readonly Item[] }) {
  const w = words.week;
  const [number, ...rest] = w[kind](items.length).split(' ');
  return (
    <div className={`due-column due-${kind}${items.length === 0 ? ' due-nothing' : ''}`}>
      <h2>
        <strong>{number}</strong> {rest.join(' ')}
      </h2>
      {items.length === 0 && <p>{w.nothing[kind]}</p>}
      <ItemList items={items.slice(0, FIRST)} />
      {items.length > FIRST && (
        <details>
          <summary>{w.andMore(items.length - FIRST)}</summary>
          <ItemList items={items.slice(FIRST)} />
        </details>
      )}
    </div>
  );
}

const ItemList = ({ items }: { items: readonly Item[] }) => (
  <ul>
    {items.map((item) => (
      <li key={item.key}>{item.node}</li>
    ))}
  </ul>
);
