import type { ScoutingField, ScoutingPair, ScoutingView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { VERBS } from '../../shared/advice/verbs.ts';
import { language } from '../../text/language.ts';
import { cropText, insectName, stageName } from '../../text/names.ts';
import { scoutingWords as w } from '../../text/scouting.ts';
import { planWords } from '../../text/walk.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { Table } from '../../ui/table/Table.tsx';
import { scoutingQuery } from './queries.ts';
import { sheetsAddress } from './search.ts';

const route = getRouteApi('/rounds/scouting');
/** As many as the server prints at once. */
const MOST_SHEETS = 100;

interface Row {
  readonly key: string;
  readonly field: ScoutingField;
  readonly pair: ScoutingPair;
}

/** Every field and insect that may be scouted, most urgent first, and the sheets to take along. */
export function ScoutingPage() {
  const search = route.useSearch();
  const { data, error, refetch, isPlaceholderData } = useQuery(scoutingQuery(search.on));
  const [chosen, choose] = useState<ReadonlySet<string> | null>(null);
  const [paper, setPaper] = useState<'a4' | 'letter'>('a4');
  useTitle(w.title);
  if (error && !data) return <Failure error={error} again={refetch} />;
  const rows = (data?.fields ?? []).flatMap((field) =>
    field.pairs.map((pair): Row => ({ key: `${field.fieldId}|${pair.insect}`, field, pair })),
  );
  const due = rows.filter(({ pair }) => pair.verb === 'scout');
  const ticked = chosen ?? new Set(due.slice(0, MOST_SHEETS).map(({ key }) => key));
  const sheets = rows.filter(({ key }) => ticked.has(key)).map(({ key }) => key);
  const toggle = (key: string) =>
    choose(new Set(ticked.has(key) ? [...ticked].filter((each) => each !== key) : [...ticked, key]));
  return (
    <main className="page" id="page" aria-busy={!data || isPlaceholderData}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data ? w.sub(rows.length, due.length) : w.loading}</p>
        </div>
        <div className="actions">
          <Link to="/scout" className="button">
            {w.phone}
          </Link>
        </div>
      </div>
      {data && rows.length === 0 && (
        <p className="absent">
          <b>{w.empty}</b> {w.emptyHow}
        </p>
      )}
      {!data && <div className="skeleton skeleton-field" aria-hidden="true" />}
      {data && rows.length > 0 && (
        <>
          <section className="sheets-bar" aria-label={w.print.title}>
            <label>
              {w.print.paper}{' '}
              <select value={paper} onChange={(event) => setPaper(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}>
                <option value="a4">{w.print.a4}</option>
                <option value="letter">{w.print.letter}</option>
              </select>
            </label>
            {sheets.length > 0 && sheets.length <= MOST_SHEETS ? (
              <a className="button primary" href={sheetsAddress(sheets, paper, language, { on: search.on })}>
                {w.print.sheets(sheets.length)}
              </a>
            ) : (
              <p className="key">{sheets.length === 0 ? w.print.none : w.print.most(MOST_SHEETS)}</p>
            )}
          </section>
          <ScoutingTable {...{ view: data, rows, ticked, toggle }} on={search.on} />
        </>
      )}
    </main>
  );
}

function ScoutingTable(props: {
  view: ScoutingView;
  rows: readonly Row[];
  ticked: ReadonlySet<string>;
  toggle: (key: string) => void;
  on: string | undefined;
}) {
  const { view, rows, ticked, toggle, on } = props;
  const wording = useWording();
  const of = ({ field, pair }: Row) => {
    const plan = view.plans.find(({ ruleId }) => ruleId === pair.rules[0]?.ruleId);
    const speaks = ['now', 'any', 'unknown'].includes(pair.rules[0]?.match ?? 'over');
    const found = pair.lastSample && (pair.lastSample.infested ?? pair.lastSample.total);
    return {
      what: `${field.name}, ${insectName(pair.insect)}`,
      crop: [cropText(field), field.stage ? stageName(field.crop, field.stage.stage) : ''].filter(Boolean).join(', '),
      figure: plan ? (speaks ? planWords.figure(plan) : w.table.otherStage) : w.table.noFigure,
      last:
        pair.lastSample && typeof found === 'number'
          ? w.table.of(found, pair.lastSample.examined, shortDay(pair.lastSample.sampledOn))
          : '–',
    };
  };
  return (
    <Table
      label={w.table.label}
      className="scouting-table"
      height="page"
      rows={rows}
      keyOf={({ key }) => key}
      rowClass={({ pair }) => `verb-${pair.verb}`}
      columns={[
        {
          head: w.print.column,
          cell: (row) => (
            <input
              type="checkbox"
              checked={ticked.has(row.key)}
              aria-label={w.print.choose(of(row).what)}
              onChange={() => toggle(row.key)}
            />
          ),
        },
        { head: w.table.field, value: ({ field }) => field.name, names: true },
        { head: w.table.crop, value: (row) => of(row).crop },
        { head: w.table.insect, value: ({ pair }) => insectName(pair.insect) },
        {
          head: w.table.verb,
          value: ({ pair }) => VERBS.indexOf(pair.verb),
          said: ({ pair }) => [wording.verb[pair.verb], wording.when(pair)].filter(Boolean).join(' '),
          cell: ({ pair }) => (
            <>
              <b>{wording.verb[pair.verb]}</b> {wording.when(pair)}
            </>
          ),
        },
        { head: w.table.figure, value: (row) => of(row).figure },
        { head: w.table.last, value: ({ pair }) => pair.lastSample?.sampledOn ?? null, said: (row) => of(row).last },
        {
          head: w.table.plan,
          cell: (row) => (
            <Link
              to="/fields/$fieldId/scouting/$insect"
              params={{ fieldId: row.field.fieldId, insect: row.pair.insect }}
              search={{ on }}
              aria-label={w.table.openOf(of(row).what)}
            >
              {w.table.open}
            </Link>
          ),
        },
      ]}
    />
  );
}
