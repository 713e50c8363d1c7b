import '../desk/desk.css';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { programQuery } from '../api/queries.ts';
import { sessionQuery } from '../api/session.ts';
import { useTheme } from '../browser/preferences.ts';
import { words } from '../text/index.ts';
import { Toasts } from '../ui/Toasts.tsx';
import { Gate } from './Gate.tsx';
import { Navigation } from './Navigation.tsx';

export function Shell() {
  const { data: session, isError } = useQuery(sessionQuery);
  const { data: program } = useQuery({ ...programQuery, enabled: isError || Boolean(session?.person) });
  const [theme, chooseTheme] = useTheme();
  const otherTheme = theme === 'dark' ? 'light' : 'dark';
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
          <span>{program?.name}</span>
          {program?.invented && <span className="invented">{words.app.invented}</span>}
        </p>
        <Navigation />
        <div className="masthead-tools">
          <button type="button" onClick={() => chooseTheme(otherTheme)} aria-label={words.app.theme.label[otherTheme]}>
            {words.app.theme[otherTheme]}
          </button>
        </div>
      </header>
      <Gate />
      <Toasts />
    </>
  );
}
