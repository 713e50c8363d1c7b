import type { Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { sessionQuery } from '../api/session.ts';
import { openQuestionsQuery } from '../desk/questions/queries.ts';
import { conflictsQuery } from '../shared/record/queries.ts';
import { pagesWords as w } from '../text/pages.ts';

const PAGES = [
  ['/', 'week', ['coordinator', 'scout', 'grower', 'reader']],
  ['/traps', 'traps', ['coordinator', 'scout', 'grower']],
  ['/flights', 'flights', ['coordinator', 'scout', 'grower']],
  ['/map', 'map', ['coordinator', 'scout', 'grower']],
  ['/scouting', 'scouting', ['coordinator', 'scout', 'grower']],
  ['/round', 'round', ['coordinator', 'scout']],
  ['/season', 'season', ['coordinator', 'scout']],
  ['/rounds', 'rounds', ['coordinator']],
  ['/learn', 'learn', ['coordinator', 'scout', 'grower']],
  ['/people', 'people', ['coordinator']],
  ['/settings', 'settings', ['coordinator', 'scout', 'grower', 'reader']],
] as const satisfies readonly (readonly [string, string, readonly Role[]])[];

/** The pages that the role reaches; questions and conflicts only while there are any. Nobody signed in: none. */
export function Navigation() {
  const { data: session } = useQuery(sessionQuery);
  const role = session?.person?.role;
  const { data: conflicts } = useQuery({ ...conflictsQuery, enabled: role !== undefined && role !== 'reader' });
  const { data: questions } = useQuery({ ...openQuestionsQuery, enabled: role === 'coordinator' || role === 'scout' });
  return (
    <nav className="masthead-nav" aria-label={w.label}>
      {role &&
        PAGES.filter(([, , roles]) => (roles as readonly Role[]).includes(role)).map(([to, name]) => (
          <Link key={to} to={to} activeOptions={{ exact: to === '/', includeSearch: false }}>
            {w[name]}
          </Link>
        ))}
      {questions && questions.open > 0 && (
        <Link to="/questions" aria-label={w.questionsLabel(questions.open)}>
          {w.questions(questions.open)}
        </Link>
      )}
      {conflicts && conflicts.length > 0 && (
        <Link to="/conflicts" className="conflicts" aria-label={w.conflictsLabel(conflicts.length)}>
          {w.conflicts(conflicts.length)}
        </Link>
      )}
    </nav>
  );
}
