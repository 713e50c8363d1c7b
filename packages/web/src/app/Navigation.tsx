import type { Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link, useLocation } from '@tanstack/react-router';
import { sessionQuery } from '../api/session.ts';
import { openQuestionsQuery } from '../desk/questions/queries.ts';
import { conflictsQuery } from '../shared/record/queries.ts';
import { pagesWords as w } from '../text/pages.ts';
import { type Place, placeOf, placesFor } from './places.ts';

/** The places that the role reaches. Nobody signed in: none. */
export function Navigation() {
  const role = useRole();
  const open = useOpen(role);
  const at = useLocation({ select: ({ pathname }) => placeOf(pathname) });
  return (
    <nav className="masthead-nav" aria-label={w.label}>
      {role &&
        placesFor(role).map((place) => (
          <Link
            key={place.id}
            to={place.pages[0].to}
            activeOptions={{ exact: true, includeSearch: false }}
            aria-current={at === place.id ? 'true' : undefined}
          >
            {nameOf(place)}
            {place.id === 'fields' && open.questions + open.conflicts > 0 && (
              <span className="count" role="img" aria-label={w.toAnswer(open.questions + open.conflicts)}>
                {open.questions + open.conflicts}
              </span>
            )}
          </Link>
        ))}
    </nav>
  );
}

/** The pages of the place that one is in, where it has several. */
export function PlaceNavigation() {
  const role = useRole();
  const open = useOpen(role);
  const at = useLocation({ select: ({ pathname }) => placeOf(pathname) });
  const place = role && placesFor(role).find(({ id }) => id === at);
  if (!place || place.pages.length < 2) return null;
  return (
    <nav className="place-nav" aria-label={w.within(w.places[place.id])}>
      {place.pages.map(({ id, to }) => {
        const count = id === 'questions' || id === 'conflicts' ? open[id] : 0;
        return (
          <Link key={id} to={to} activeOptions={{ exact: true, includeSearch: false }} className={count > 0 ? 'has-open' : ''}>
            {w.pages[id]}
            {count > 0 && ` ${count}`}
          </Link>
        );
      })}
    </nav>
  );
}

/** A place of which a role reaches one page is called by it. */
const nameOf = ({ id, pages }: Place) => (pages.length === 1 ? w.pages[pages[0].id] : w.places[id]);

const useRole = (): Role | undefined => useQuery(sessionQuery).data?.person?.role;

/** How many questions and conflicts wait for an answer, of those that the role may see. */
function useOpen(role: Role | undefined) {
  const { data: conflicts } = useQuery({ ...conflictsQuery, enabled: role !== undefined && role !== 'reader' });
  const { data: questions } = useQuery({ ...openQuestionsQuery, enabled: role === 'coordinator' || role === 'scout' });
  return { questions: questions?.open ?? 0, conflicts: conflicts?.length ?? 0 };
}
