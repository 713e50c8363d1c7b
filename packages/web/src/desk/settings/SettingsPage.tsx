import { Preferences } from '../../shared/settings/Preferences.tsx';
import { You } from '../../shared/settings/You.tsx';
import { settingsWords as w } from '../../text/settings.ts';
import { useTitle } from '../../ui/media.ts';
import { About } from './About.tsx';
import { ProgramNames } from './ProgramNames.tsx';

export function SettingsPage() {
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
        <You />
        <Preferences />
        <ProgramNames />
        <About />
      </div>
    </main>
  );
}
