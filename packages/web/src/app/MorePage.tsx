import type { Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { keptSession, sessionQuery } from '../api/session.ts';
import { barPlaces } from '../shared/bar/places.ts';
import { HomeScreen } from '../shared/HomeScreen.tsx';
import { OtherProgramButton, useOtherProgram } from '../shared/OtherProgram.tsx';
import { desk, useDesk } from '../shared/record/desk.ts';
import { Preferences } from '../shared/settings/Preferences.tsx';
import { You } from '../shared/settings/You.tsx';
import { homeScreenWords } from '../text/home-screen.ts';
import { moreWords as w } from '../text/more.ts';
import { pagesWords } from '../text/pages.ts';
import { useTitle } from '../ui/media.ts';
import { Setting } from '../ui/Setting.tsx';
import { placesFor, programPagesFor } from './places.ts';

/** All that is not under the thumb: what waits to be sent, the other pages, who one is, and how things are shown. */
export function MorePage() {
  const role = useQuery(sessionQuery).data?.person?.role ?? keptSession()?.person?.role;
  const other = useOtherProgram();
  useTitle(w.title);
  return (
    <main className="page more-page" id="page">
      <h1>{w.title}</h1>
      {role && role !== 'reader' && <Unsent />}
      {role && <Pages role={role} />}
      {other && (
        <p className="actions">
          <OtherProgramButton kind={other} />
        </p>
      )}
      <div className="settings">
        <You />
        <Setting title={homeScreenWords.title}>
          <HomeScreen />
        </Setting>
        <Preferences />
      </div>
    </main>
  );
}

function Unsent() {
  const { status } = useDesk();
  const waits = (status?.pending ?? 0) + (status?.photos ?? 0);
  const refused = status?.refused ?? 0;
  return (
    <section className="more-unsent" aria-labelledby="more-unsent">
      <h2 id="more-unsent">{w.unsent.title}</h2>
      <p role="status">
        {waits === 0 && refused === 0 && w.unsent.none}
        {waits > 0 && w.unsent.waits(waits)} {waits > 0 && status?.trouble && w.unsent.trouble[status.trouble]}
      </p>
      {refused > 0 && (
        <p>
          <span className="not-sent">{w.unsent.refused(refused)}</span>{' '}
          <Link to="/conflicts" className="button">
            {w.unsent.seeRefused}
          </Link>
        </p>
      )}
      {waits > 0 && (
        <p className="actions">
          <button
            type="button"
            className="button"
            aria-disabled={status?.sending}
            onClick={() => void desk().then((outbox) => outbox.sync())}
          >
            {status?.sending ? w.unsent.sending : w.unsent.send}
          </button>
        </p>
      )}
    </section>
  );
}

function Pages({ role }: { role: Role }) {
  const here = new Set<string>(barPlaces(role).map(({ to }) => to));
  const places = placesFor(role).flatMap(({ id, pages }) =>
    pages.map((page) => ({
      to: page.to,
      // A list by itself says nothing: it goes by the name of its place.
      text: page.id === 'list' ? pagesWords.places[id] : pagesWords.pages[page.id],
      within: pages.length > 1 && page.id !== 'list' ? pagesWords.places[id] : null,
    })),
  );
  const scouting = role === 'coordinator' ? [{ to: '/scout' as const, text: w.scout, within: pagesWords.places.rounds }] : [];
  const program = programPagesFor(role)
    // Its choices stand on this page already.
    .filter(({ id }) => id !== 'settings')
    .map(({ id, to }) => ({ to, text: pagesWords.programPages[id], within: null }));
  return (
    <nav className="more-pages" aria-label={w.pages}>
      {[...places, ...scouting, ...program]
        .filter(({ to }) => !here.has(to))
        .map(({ to, text, within }) => (
          <Link key={to} to={to}>
            <span>{text}</span>
            {within && <small>{within}</small>}
          </Link>
        ))}
    </nav>
  );
}
