import '../desk/desk.css';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect } from 'react';
import { programQuery } from '../api/queries.ts';
import { sessionQuery } from '../api/session.ts';
import { useTheme } from '../browser/preferences.ts';
import { KeptSince } from '../shared/KeptSince.tsx';
import { words } from '../text/index.ts';
import { Toasts } from '../ui/Toasts.tsx';
import { DayLine } from './DayLine.tsx';
import { Gate } from './Gate.tsx';
import { Navigation } from './Navigation.tsx';
import { PhoneBar } from './PhoneBar.tsx';
import { ProgramMenu } from './ProgramMenu.tsx';
import { Search } from './Search.tsx';

export function Shell() {
  const { data: session, isError } = useQuery(sessionQuery);
  const { data: program } = useQuery({ ...programQuery, enabled: isError || Boolean(session?.person) });
  const from = program && [words.app.name, program.name, ...(program.invented ? [words.app.invented] : [])].join(' · ');
  useEffect(() => {
    if (from) document.documentElement.style.setProperty('--printed-from', JSON.stringify(from));
  }, [from]);
  return (
    <>
      <a className="skip" href="#page">
        {words.app.skip}
      </a>
      <header className="masthead">
        <Link to="/" className="masthead-name" aria-label={words.app.home}>
          {words.app.name}
        </Link>
        <p className="masthead-program">
          <span title={program?.name}>{program?.name}</span>
          {program?.invented && <span className="invented">{words.app.invented}</span>}
        </p>
        <Navigation />
        <div className="masthead-tools">
          <Search />
          <ProgramMenu />
          <ThemeButton />
        </div>
      </header>
      <DayLine />
      <KeptSince />
      <Gate />
      <PhoneBar />
      <Toasts />
    </>
  );
}

/** A moon, to go over to the night; a sun, to come back. */
function ThemeButton() {
  const [theme, chooseTheme] = useTheme();
  const other = theme === 'dark' ? 'light' : 'dark';
  return (
    <button type="button" onClick={() => chooseTheme(other)} aria-label={words.app.theme[other]} title={words.app.theme[other]}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        {other === 'dark' ? (
          <path d="M19.5 14.6A8 8 0 0 1 9.4 4.5a8 8 0 1 0 10.1 10.1Z" />
        ) : (
          <path d="M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8Zm0-6v3m0 14v3M2 12h3m14 0h3M4.9 4.9 7 7m10 10 2.1 2.1m0-14.2L17 7M7 17l-2.1 2.1" />
        )}
      </svg>
    </button>
  );
}
