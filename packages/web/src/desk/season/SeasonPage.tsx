import type { SeasonView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { dayTextFrom, shiftDay } from '../../format/day.ts';
import { seasonWords as w } from '../../text/season.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { useTitle } from '../../ui/media.ts';
import { Tabs } from '../../ui/Tabs.tsx';
import { BudgetPart } from './BudgetPart.tsx';
import { EmptySeason } from './EmptySeason.tsx';
import { LuresPart } from './LuresPart.tsx';
import { NumbersPart } from './NumbersPart.tsx';
import { PlanPart } from './PlanPart.tsx';
import { seasonQuery } from './queries.ts';
import { PARTS, type Part, type SeasonSearch } from './search.ts';
import { TruthPart } from './TruthPart.tsx';

const route = getRouteApi('/season');

/** What is done in February and forgotten in July: traps, days, lures, money, and what became of them. */
export function SeasonPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data, error, refetch } = useQuery(seasonQuery(search.year, search.on));
  useTitle(w.title);
  if (error && !data) return <Failure error={error} again={refetch} />;
  const part = search.part ?? 'plan';
  return (
    <main className="page season" id="page" aria-busy={!data}>
      <div className="page-head">
        <div>
          <h1>{data ? `${w.title} ${data.season}` : w.title}</h1>
          <p className="sub">{data ? headOf(data) : w.loading}</p>
        </div>
        {data && (
          <div className="actions">
            <SelectField
              label={w.year}
              value={String(data.season)}
              choices={data.seasons.map((year) => [String(year), String(year)])}
              choose={(year) => void navigate({ search: (before) => ({ ...before, year: Number(year) }), resetScroll: false })}
            />
            <button type="button" className="button no-print" onClick={() => window.print()}>
              {w.print}
            </button>
          </div>
        )}
      </div>
      <Tabs
        label={w.parts.label}
        at={part}
        choose={(id) => void navigate({ search: (before) => ({ ...before, part: inAddress(id) }), resetScroll: false })}
        tabs={PARTS.map((id) => ({
          id,
          link: (
            <Link to="/season" search={{ ...search, part: inAddress(id) }} resetScroll={false}>
              {w.parts[id]}
            </Link>
          ),
        }))}
      >
        {data ? <Body view={data} part={part} search={search} /> : <div className="skeleton skeleton-field" aria-hidden="true" />}
      </Tabs>
    </main>
  );
}

const headOf = ({ season, from, to, today, state }: SeasonView): string =>
  `${w.sub(season, dayTextFrom(from, today), dayTextFrom(shiftDay(to, -1), today))} · ${w.state[state]}`;

const inAddress = (part: Part) => (part === 'plan' ? undefined : part);

function Body({ view, part, search }: { view: SeasonView; part: Part; search: SeasonSearch }) {
  if (view.fields.length === 0 || (view.lines.length === 0 && view.written === null)) return <EmptySeason view={view} />;
  switch (part) {
    case 'plan':
      return <PlanPart view={view} />;
    case 'numbers':
      return <NumbersPart view={view} />;
    case 'lures':
      return <LuresPart view={view} />;
    case 'budget':
      return <BudgetPart view={view} />;
    case 'truth':
      return <TruthPart view={view} on={search.on} />;
  }
}
