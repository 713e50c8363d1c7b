import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { sessionQuery } from '../../api/session.ts';
import { programWords } from '../../text/program.ts';
import { useTitle } from '../../ui/media.ts';
import { Setting } from '../../ui/Setting.tsx';
import { Calendar } from './Calendar.tsx';
import { Download } from './Download.tsx';
import { Restore } from './Restore.tsx';

/** How records come in and go out. */
export function DataPage() {
  const w = programWords.data;
  const { data: session } = useQuery(sessionQuery);
  useTitle(w.title);
  const isCoordinator = session?.person?.role === 'coordinator';
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
        {isCoordinator && (
          <Setting title={w.import.title}>
            <p>{w.import.text}</p>
            <p>
              <Link className="button primary" to="/program/data/import">
                {w.import.open}
              </Link>
            </p>
          </Setting>
        )}
        <Setting title={w.export.title}>
          <p>{w.export.text}</p>
          <Download path="/api/program.zip" text={w.export.folder} />
          <Download path="/api/program.xlsx" text={w.export.workbook} />
        </Setting>
        {isCoordinator && (
          <>
            <Setting title={w.backup.title} note={w.backup.caution}>
              <p>{w.backup.text}</p>
              <Download path="/api/backup.zip" text={w.backup.make} />
            </Setting>
            <Setting title={w.restore.title}>
              <p>{w.restore.text}</p>
              <Restore />
            </Setting>
          </>
        )}
      </div>
    </main>
  );
}
