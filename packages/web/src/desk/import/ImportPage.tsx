import type { Problem } from '@duskwatch/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ClipboardEvent, type DragEvent, type ReactNode, useState } from 'react';
import { ApiError, send } from '../../api/client.ts';
import { programQuery } from '../../api/queries.ts';
import { OtherProgramButton, useOtherProgram } from '../../shared/OtherProgram.tsx';
import { ProblemText } from '../../shared/record/ProblemText.tsx';
import { uuidv7 } from '../../sync/uuid.ts';
import { sheetWords, importWords as w } from '../../text/import.ts';
import { useTitle } from '../../ui/media.ts';
import { toast } from '../../ui/toast.ts';
import { Becomes } from './Becomes.tsx';
import { Earlier } from './Earlier.tsx';
import type { Answer, Applied, Proposed } from './messages.ts';
import { Picture } from './Picture.tsx';
import { Questions } from './Questions.tsx';
import { heldQuery, importsQuery } from './queries.ts';
import { useReader } from './useReader.ts';

/** From a file to records in four looks: what it holds, what it leaves open, what it becomes, and that it is kept. */
export function ImportPage() {
  useTitle(w.title);
  const queries = useQueryClient();
  const { data: program } = useQuery(programQuery);
  const { data: earlier = [] } = useQuery(importsQuery);
  const read = useReader();
  const [file, setFile] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [proposed, setProposed] = useState<Proposed | null>(null);
  const [answers, setAnswers] = useState<Readonly<Record<string, string>>>({});
  const [applied, setApplied] = useState<Applied | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  const take = async (name: string, bytes: Uint8Array) => {
    setFile(name);
    setProposed(null);
    setApplied(null);
    setProblems([]);
    setBusy(true);
    try {
      const held = await queries.fetchQuery(heldQuery);
      const matches = earlier.flatMap(({ match, undone }) => (match === null || undone !== null ? [] : [match]));
      hear(await read({ ask: 'propose', file: name, bytes, held, earlier: matches }));
    } finally {
      setBusy(false);
    }
  };
  const hear = (said: Answer) => {
    setProblems(said.is === 'refused' ? said.problems : []);
    if (said.is === 'proposed') {
      setProposed(said);
      setAnswers(said.answers);
    }
    if (said.is === 'applied') setApplied(said);
  };
  const takeFiles = async ([chosen]: readonly File[]) => {
    if (chosen) await take(chosen.name, new Uint8Array(await chosen.arrayBuffer()));
  };
  const preview = async () => {
    setBusy(true);
    try {
      hear(await read({ ask: 'apply', answers }));
    } finally {
      setBusy(false);
    }
  };
  const keep = async ({ match, records }: Applied) => {
    setBusy(true);
    try {
      const body = { importId: uuidv7(Date.now()), file, reading: proposed!.proposal.reading, match, records };
      const done = await send<{ added: number; changed: number; unchanged: number }>('POST', '/api/imports', body);
      toast(w.done(done.added, done.changed, done.unchanged));
      setProposed(null);
      setApplied(null);
      setFile(null);
      await queries.invalidateQueries();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblems(error.problems);
      setApplied(null);
    } finally {
      setBusy(false);
    }
  };

  if (program?.invented) return <Invented />;
  return (
    <Frame>
      <Choose take={takeFiles} paste={(text) => take(w.pasted, new TextEncoder().encode(text))} />
      {busy && <output className="note">{w.reading(file ?? '')}</output>}
      {problems.length > 0 && (
        <section className="import-problems" role="alert">
          <p>{w.wrong}</p>
          <ul>
            {problems.slice(0, MOST_SHOWN).map((problem) => (
              <li key={JSON.stringify(problem)}>
                {[problem.where.file, problem.where.row, problem.where.column].filter(Boolean).join(' · ')}{' '}
                <ProblemText problem={problem} />
              </li>
            ))}
          </ul>
        </section>
      )}
      {proposed && !applied && (
        <>
          <section aria-label={w.understood} className="import-reading">
            <h2>{w.understood}</h2>
            <p className="import-line">{sheetWords.reading(proposed.proposal.reading)}</p>
            {proposed.proposal.asideSheets.map((aside) => (
              <p key={aside.sheet} className="key">
                {sheetWords.aside(aside)}
              </p>
            ))}
            {proposed.pictures.map((picture) => (
              <Picture key={picture.sheet ?? ''} picture={picture} />
            ))}
          </section>
          {proposed.proposal.match !== null && (
            <section aria-label={w.questions}>
              <h2>{w.questions}</h2>
              {proposed.proposal.questions.length === 0 && <p>{w.none}</p>}
              <Questions
                questions={proposed.proposal.questions}
                answers={answers}
                remembered={
                  new Set(
                    Object.entries(proposed.answers).flatMap(([id, answer]) => (answer && answer === answers[id] ? [id] : [])),
                  )
                }
                answer={(id, answer) => setAnswers((before) => ({ ...before, [id]: answer }))}
              />
              <button type="button" className="button primary" disabled={busy} onClick={() => void preview()}>
                {w.preview}
              </button>
            </section>
          )}
        </>
      )}
      {applied && <Becomes applied={applied} busy={busy} keep={() => void keep(applied)} back={() => setApplied(null)} />}
      <Earlier imports={earlier} />
    </Frame>
  );
}

const MOST_SHOWN = 50;

function Frame({ children }: { children: ReactNode }) {
  return (
    <main className="page" id="page">
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.sub}</p>
        </div>
      </div>
      {children}
    </main>
  );
}

function Choose({ take, paste }: { take: (files: readonly File[]) => Promise<void>; paste: (text: string) => Promise<void> }) {
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    void take([...event.dataTransfer.files]);
  };
  const pasted = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData('text/plain');
    if (text.includes('\t') || text.includes('\n')) void paste(text);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping and pasting are second ways; the button is the first
    <div
      className={over ? 'import-choose over' : 'import-choose'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
      onPaste={pasted}
    >
      <label className="button primary">
        {w.choose}
        <input
          type="file"
          accept=".csv,.tsv,.txt,.xlsx,.xls,.ods"
          onChange={({ currentTarget }) => {
            void take([...(currentTarget.files ?? [])]);
            // The same file, mended, is a change again.
            currentTarget.value = '';
          }}
        />
      </label>
      <span>{w.drop}</span>
    </div>
  );
}

function Invented() {
  const other = useOtherProgram();
  return (
    <Frame>
      <p className="note">{w.invented}</p>
      {other === 'own' && <OtherProgramButton kind="own" begin />}
    </Frame>
  );
}
