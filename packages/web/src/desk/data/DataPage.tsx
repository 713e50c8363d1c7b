import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { sessionQuery } from '../../api/session.ts';
import { programWords } from '../../text/program.ts';
import { useTitle } from '../../ui/media.ts';
import { Setting } from '../../ui/Setting.tsx';
import { Calendar } from './Calendar.tsx';

/** How records come in and go out. What needs the server's own machine is the coordinator's. */
export function DataPage() {
  const w = programWords.data;
  const { data: session } = useQuery(sessionQuery);
  useTitle(w.title);
  return (
    <main className="page" id="page">
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.sub}</p>
        </div>
      </div>
      <div className="settings">
        <Calendar />
        {session?.person?.role === 'coordinator' &&
          (['import', 'export', 'backup'] as const).map((act) => (
            <Setting key={act} title={w[act].title}>
              <p>{w[act].text}</p>
              {act === 'import' && (
                <p>
                  <Link className="button primary" to="/program/data/import">
                    {w.import.open}
                  </Link>
                </p>
              )}
              <p>
                <code>{w[act].command}</code>
              </p>
            </Setting>
          ))}
      </div>
    </main>
  );
}
