import { citation, describeSources, type SourceKind } from '@duskwatch/core';
import { localName } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';
import { useWording } from '../../text/wording.ts';

/** Where every fact of the catalogue comes from. */
export function Sources() {
  const w = settingsWords.sources;
  const wording = useWording();
  const lines = describeSources();
  const kinds = [...new Set(lines.map(({ kind }) => kind))];
  return (
    <section className="sources" aria-labelledby="sources-title">
      <h2 id="sources-title">{w.title(lines.length)}</h2>
      <p className="key">{w.text}</p>
      {kinds.map((kind) => (
        <KindOfSource key={kind} kind={kind} lines={lines.filter((line) => line.kind === kind)} standing={wording.standing} />
      ))}
    </section>
  );
}

function KindOfSource(props: {
  kind: SourceKind;
  lines: ReturnType<typeof describeSources>;
  standing: ReturnType<typeof useWording>['standing'];
}) {
  const w = settingsWords.sources;
  const name = w.kinds[props.kind];
  return (
    <details className="behind">
      <summary>
        {name} ({props.lines.length})
      </summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={name} tabIndex={0}>
        <table className="figures sources-table">
          <thead>
            <tr>
              <th scope="col">{w.fact}</th>
              <th scope="col">{w.source}</th>
              <th scope="col">{w.standing}</th>
              <th scope="col">{w.note}</th>
            </tr>
          </thead>
          <tbody>
            {props.lines.map((line, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines carry no state and two may be alike
              <tr key={index}>
                <td lang="en">{line.id}</td>
                <td>
                  <span lang="en">{citation(line.source)}</span>
                  {line.works.length > 0 && <Works works={line.works} />}
                </td>
                <td>{props.standing[line.standing]}</td>
                <td>{line.note && localName(line.note)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}

/** What is cited, in full: who, when, what, and where one can read it. */
function Works({ works }: { works: ReturnType<typeof describeSources>[number]['works'] }) {
  const { undated } = settingsWords.sources;
  return (
    <ul className="key">
      {works.map(({ author, year, title, where }) => (
        <li key={`${author} ${where}`}>
          <span lang="en">{author}</span>, {year ?? undated}
          {title !== null && (
            <>
              : <cite lang="en">{title}</cite>
            </>
          )}
          . <span lang="en">{where}</span>
        </li>
      ))}
    </ul>
  );
}
