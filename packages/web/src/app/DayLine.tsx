import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link, useLocation, useNavigate } from '@tanstack/react-router';
import { programQuery } from '../api/queries.ts';
import { sessionQuery } from '../api/session.ts';
import { dayText, longDay } from '../format/day.ts';
import { words } from '../text/index.ts';
import { pagesWords } from '../text/pages.ts';
import { DateControl } from '../ui/DateControl.tsx';
import { PlaceNavigation } from './Navigation.tsx';
import { helpFor, isOfToday, placeOf } from './places.ts';

const helpLink = pagesWords.howToRead;

const root = getRouteApi('__root__');

/** To what the help says of this page. */
function HelpLink() {
  const part = useLocation({ select: ({ pathname }) => helpFor(pathname) });
  if (part === null) return null;
  return (
    <Link to="/help" hash={`read-${part}`} className="how-to-read" aria-label={helpLink} title={helpLink}>
      ?
    </Link>
  );
}

/** Under the masthead of every page: the pages of its place, the day it is read on, and loudly so where that is not today. */
export function DayLine() {
  const w = words.date;
  const { on } = root.useSearch();
  const { pathname } = useLocation();
  const navigate = useNavigate();
  const { data: session } = useQuery(sessionQuery);
  const { data: program } = useQuery({ ...programQuery, enabled: Boolean(session?.person) });
  if (placeOf(pathname) === null || (session && !session.person)) return null;
  // Its room is there before the answer is.
  const today = program?.today;
  const day = on ?? today;
  const another = today !== undefined && day !== today;
  const ofToday = isOfToday(pathname);
  const said = ofToday ? w.ofToday : day! < today! ? w.past : w.ahead;
  const choose = (next: string) =>
    void navigate({
      to: '.',
      search: (before) => ({ ...before, on: next === today ? undefined : next }),
      hash: true,
      resetScroll: false,
    });
  return (
    <>
      <section className={`day-line${ofToday ? ' of-today' : ''}`} aria-label={w.line}>
        <PlaceNavigation />
        <HelpLink />
        {!ofToday && (
          <div className="day-chosen">
            {day && <p>{day === today ? w.today(dayText(day)) : dayText(day)}</p>}
            {day && <DateControl on={day} choose={choose} />}
          </div>
        )}
      </section>
      {another && (
        <p className="another-day" role="status">
          <span>{said(longDay(day!))}</span>{' '}
          <Link to="." search={(before) => ({ ...before, on: undefined })} hash resetScroll={false}>
            {w.back}
          </Link>
        </p>
      )}
    </>
  );
}
