import { useQuery } from '@tanstack/react-query';
import { Link, Outlet } from '@tanstack/react-router';
import { programQuery } from '../api/queries.ts';
import { words } from '../words/index.ts';
import { useTemperatureUnit, useTheme } from './preferences.ts';

export function Shell() {
  const { data: program } = useQuery(programQuery);
  const [theme, chooseTheme] = useTheme();
  const [unit, chooseUnit] = useTemperatureUnit();
  const otherTheme = theme === 'dark' ? 'light' : 'dark';
  const otherUnit = unit === 'F' ? 'C' : 'F';
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
        <div className="masthead-tools">
          <button type="button" onClick={() => chooseUnit(otherUnit)} aria-label={words.app.units[otherUnit]}>
            °{unit}
          </button>
          <button type="button" onClick={() => chooseTheme(otherTheme)} aria-label={words.app.theme.label[otherTheme]}>
            {words.app.theme[otherTheme]}
          </button>
        </div>
      </header>
      <Outlet />
    </>
  );
}
