import { programWords } from '../../text/program.ts';
import { useTitle } from '../../ui/media.ts';
import { AllRules } from './AllRules.tsx';
import { OwnRules } from './OwnRules.tsx';
import { Rules } from './Rules.tsx';
import { Sources } from './Sources.tsx';

/** Which rules speak in this program, and where every fact of the catalogue comes from. */
export function RulesPage() {
  const w = programWords.rules;
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
        <Rules />
      </div>
      <OwnRules />
      <AllRules />
      <Sources />
    </main>
  );
}
