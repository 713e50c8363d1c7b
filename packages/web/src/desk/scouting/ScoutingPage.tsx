import type { ScoutingField, ScoutingPair, ScoutingView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { language } from '../../text/language.ts';
import { cropText, insectName, stageName } from '../../text/names.ts';
import { planWords } from '../../text/scout.ts';
import { scoutingWords as w } from '../../text/scouting.ts';
import { useWording } from '../../text/wording.ts';
import { DateControl } from '../../ui/DateControl.tsx';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { scoutingQuery } from './queries.ts';
import { sheetsAddress } from './search.ts';

const route = getRouteApi('/scouting');
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
  const navigate = route.useNavigate();
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
          {(data ?? search.on) && (
            <DateControl
              on={search.on ?? data!.on}
              pinned={search.on !== undefined}
              choose={(on) => navigate({ search: { on }, resetScroll: false })}
            />
          )}
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
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="behind-scroll scouting-scroll" aria-label={w.table.label} tabIndex={0}>
      <table className="figures scouting-table">
        <thead>
          <tr>
            {[
              w.print.column,
              w.table.field,
              w.table.crop,
              w.table.insect,
              w.table.verb,
              w.table.figure,
              w.table.last,
              w.table.plan,
            ].map((head) => (
              <th scope="col" key={head}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, field, pair }) => {
            const plan = view.plans.find(({ ruleId }) => ruleId === pair.rules[0]?.ruleId);
            const speaks = ['now', 'any', 'unknown'].includes(pair.rules[0]?.match ?? 'over');
            const what = `${field.name}, ${insectName(pair.insect)}`;
            const found = pair.lastSample && (pair.lastSample.infested ?? pair.lastSample.total);
            return (
              <tr key={key} className={`verb-${pair.verb}`}>
                <td>
                  <input
                    type="checkbox"
                    checked={ticked.has(key)}
                    aria-label={w.print.choose(what)}
                    onChange={() => toggle(key)}
                  />
                </td>
                <th scope="row">{field.name}</th>
                <td>
                  {[cropText(field), field.stage ? stageName(field.crop, field.stage.stage) : ''].filter(Boolean).join(', ')}
                </td>
                <td>{insectName(pair.insect)}</td>
                <td>
                  <b>{wording.verb[pair.verb]}</b> {wording.when(pair)}
                </td>
                <td>{plan ? (speaks ? planWords.figure(plan) : w.table.otherStage) : w.table.noFigure}</td>
                <td>
                  {pair.lastSample && typeof found === 'number'
                    ? w.table.of(found, pair.lastSample.examined, shortDay(pair.lastSample.sampledOn))
                    : '–'}
                </td>
                <td>
                  <Link
                    to="/fields/$fieldId/scouting/$insect"
                    params={{ fieldId: field.fieldId, insect: pair.insect }}
                    search={{ on }}
                    aria-label={w.table.openOf(what)}
                  >
                    {w.table.open}
                  </Link>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
