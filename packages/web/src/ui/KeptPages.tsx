import { Link } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { type KeptAnswer, keptAnswers } from '../api/kept-answers.ts';
import { keptSession } from '../api/session.ts';
import { instantText } from '../format/instant.ts';
import { offlineWords as w } from '../text/offline.ts';

/** The pages of which this device keeps an answer, and when it was read. */
const PAGES = [
  { path: '/api/own-fields', to: '/', name: 'ownFields' },
  { path: '/api/week', to: '/', name: 'week' },
  { path: '/api/traps', to: '/fields', name: 'traps' },
  { path: '/api/questions', to: '/questions', name: 'questions' },
] as const;
const FIELD = /^\/api\/fields\/[^/]+$/;

/** What this device holds where there is no signal, and from when. */
export function KeptPages() {
  const [kept, setKept] = useState<readonly KeptAnswer[] | null>(null);
  useEffect(() => void keptAnswers().then(setKept), []);
  const role = keptSession()?.person?.role;
  if (kept === null) return null;
  const walks = role === 'scout' || role === 'coordinator';
  const pages = PAGES.flatMap((page) => kept.filter(({ path }) => path === page.path).map(({ readMs }) => ({ ...page, readMs })));
  const fields = kept.filter(({ path }) => FIELD.test(path));
  if (pages.length + fields.length === 0 && !walks) return <p>{w.holdsNothing}</p>;
  return (
    <section className="kept-pages">
      <h2>{w.holds}</h2>
      <ul>
        {walks && (
          <li>
            <Link to="/round">{w.pages.round}</Link>, <Link to="/scout">{w.pages.scout}</Link>
          </li>
        )}
        {pages.map(({ name, to, readMs }) => (
          <li key={name}>
            <Link to={to}>{w.pages[name]}</Link>, {w.read(instantText(new Date(readMs).toISOString()))}
          </li>
        ))}
        {fields.length > 0 && <li>{w.pages.fields(fields.length)}</li>}
      </ul>
    </section>
  );
}
