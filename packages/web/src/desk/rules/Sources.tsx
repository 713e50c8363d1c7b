import { citation, describeSources, type SourceKind } from '@duskwatch/core';
import { localName } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';

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
    <Folded title={`${name} (${props.lines.length})`}>
      <Table
        label={name}
        className="sources-table"
        height="part"
        rows={props.lines}
        keyOf={(_, index) => index}
        columns={[
          { head: w.fact, value: ({ id }) => id, cell: ({ id }) => <span lang="en">{id}</span> },
          {
            head: w.source,
            value: ({ source }) => citation(source),
            cell: ({ source, works }) => (
              <>
                <span lang="en">{citation(source)}</span>
                {works.length > 0 && <Works works={works} />}
              </>
            ),
          },
          { head: w.standing, value: ({ standing }) => props.standing[standing] },
          { head: w.note, value: ({ note }) => (note ? localName(note) : null) },
        ]}
      />
    </Folded>
  );
}

/** What is cited, in full: who, when, what, and where one can read it. */
function Works({ works }: { works: ReturnType<typeof describeSources>[number]['works'] }) {
  const { undated, nameless } = settingsWords.sources;
  return (
    <ul className="key">
      {works.map(({ author, year, title, where }) => (
        <li key={`${author} ${where}`}>
          <span lang="en">{author}</span>, {year ?? (title === null ? nameless : undated)}
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
