import type { Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { sessionQuery } from '../../api/session.ts';
import { reviewWords as w } from '../../text/review.ts';
import { useTitle } from '../../ui/media.ts';
import { Tabs } from '../../ui/Tabs.tsx';
import { DesignsPart } from './DesignsPart.tsx';
import { InfestationPart } from './InfestationPart.tsx';
import { LuresPart } from './LuresPart.tsx';
import { ReviewPart } from './ReviewPart.tsx';
import { PARTS, type Part, type ReviewSearch } from './search.ts';
import { YearsPart } from './YearsPart.tsx';

const route = getRouteApi('/season/review');

/** What compares farms with one another is the coordinator's. */
const FOR_ALL: readonly Part[] = ['review', 'years'];
const partsFor = (role: Role): readonly Part[] => (role === 'coordinator' ? PARTS : FOR_ALL);

export function ReviewPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data: session } = useQuery(sessionQuery);
  useTitle(w.title);
  const parts = partsFor(session?.person?.role ?? 'grower');
  const part = parts.find((each) => each === search.part) ?? 'review';
  const change = (some: Partial<ReviewSearch>) =>
    navigate({ search: (before) => ({ ...before, ...some }), replace: true, resetScroll: false });
  return (
    <main className="page review-page" id="page">
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.sub}</p>
        </div>
      </div>
      <Tabs
        label={w.parts.label}
        at={part}
        choose={(each) => void change({ part: each })}
        tabs={parts.map((id) => ({
          id,
          link: (
            <Link to="/season/review" search={(before) => ({ ...before, part: id })} resetScroll={false}>
              {w.parts[id]}
            </Link>
          ),
        }))}
      >
        {part === 'review' && <ReviewPart search={search} change={change} />}
        {part === 'years' && <YearsPart search={search} change={change} />}
        {part === 'designs' && <DesignsPart on={search.on} />}
        {part === 'lures' && <LuresPart on={search.on} />}
        {part === 'infestation' && <InfestationPart on={search.on} />}
      </Tabs>
    </main>
  );
}
