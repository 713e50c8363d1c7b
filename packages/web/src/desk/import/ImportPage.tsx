import type { Problem } from '@duskwatch/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ClipboardEvent, type DragEvent, type ReactNode, useRef, useState } from 'react';
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
import type { Answer, Applied, Ask, Progress, Proposed } from './messages.ts';
import { Picture } from './Picture.tsx';
import { Questions } from './Questions.tsx';
import { heldQuery, importsQuery } from './queries.ts';
import { useReader } from './useReader.ts';

/** From files to records, one after another, in four looks: what each holds, what it leaves open, what it becomes, and that it is kept. */
export function ImportPage() {
  useTitle(w.title);
  const queries = useQueryClient();
  const { data: program } = useQuery(programQuery);
  const { data: earlier = [] } = useQuery(importsQuery);
  const reader = useReader();
  const [file, setFile] = useState<string | null>(null);
  const [queue, setQueue] = useState<{ readonly files: readonly File[]; readonly all: number }>({ files: [], all: 1 });
  const [busy, setBusy] = useState<Progress['stage'] | 'keeping' | null>(null);
  const [proposed, setProposed] = useState<Proposed | null>(null);
  const [answers, setAnswers] = useState<Readonly<Record<string, string>>>({});
  const [applied, setApplied] = useState<Applied | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  const clear = () => {
    setProposed(null);
    setApplied(null);
    setProblems([]);
  };
  // Which file is at hand: what comes back late, of one before it, changes nothing.
  const turn = useRef(0);

  const take = async (name: string, bytes: Uint8Array) => {
    turn.current++;
    const mine = turn.current;
    setFile(name);
    clear();
    if (bytes.length > MOST_BYTES) return setProblems([tooLarge(name, bytes.length)]);
    setBusy('opening');
    try {
      const held = await queries.fetchQuery(heldQuery);
      const kept = await queries.fetchQuery(importsQuery);
      const matches = kept.flatMap(({ match, undone }) => (match === null || undone !== null ? [] : [match]));
      hear(await reader.ask({ ask: 'propose', file: name, bytes, held, earlier: matches }, ({ stage }) => setBusy(stage)));
    } finally {
      if (turn.current === mine) setBusy(null);
    }
  };
  const hear = (said: Answer | null) => {
    if (said === null) return;
    setProblems(said.is === 'refused' ? said.problems : []);
    if (said.is === 'proposed') {
      setProposed(said);
      setAnswers(said.answers);
    }
    if (said.is === 'applied') setApplied(said);
  };
  const takeFiles = async (chosen: readonly File[]) => {
    setQueue({ files: chosen.slice(1), all: chosen.length });
    const [first] = chosen;
    if (first) await take(first.name, new Uint8Array(await first.arrayBuffer()));
  };
  const next = async () => {
    clear();
    const [first, ...rest] = queue.files;
    setQueue(({ all }) => ({ files: rest, all }));
    if (first) await take(first.name, new Uint8Array(await first.arrayBuffer()));
    else setFile(null);
  };
  const stop = () => {
    reader.stop();
    setBusy(null);
    clear();
  };
  const asking = async (ask: Ask) => {
    setBusy('reading');
    try {
      hear(await reader.ask(ask, ({ stage }) => setBusy(stage)));
    } finally {
      setBusy(null);
    }
  };
  const keep = async () => {
    const mine = turn.current;
    setBusy('keeping');
    try {
      const packed = await reader.ask({ ask: 'pack', importId: uuidv7(Date.now()) });
      if (packed?.is !== 'packed') return hear(packed);
      const done = await send<{ added: number; changed: number; unchanged: number }>('POST', '/api/imports', packed.body);
      toast(w.done(done.added, done.changed, done.unchanged));
      await queries.invalidateQueries();
      if (turn.current === mine) await next();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblems(error.problems);
      setApplied(null);
    } finally {
      if (turn.current === mine) setBusy(null);
    }
  };

  if (program?.invented) return <Invented />;
  return (
    <Frame>
      <Choose take={takeFiles} paste={(text) => take(w.pasted, new TextEncoder().encode(text))} />
      {file !== null && queue.all > 1 && (
        <p className="import-queue">
          {w.ofFiles(queue.all - queue.files.length, queue.all, file)}{' '}
          <button type="button" className="plain-button" disabled={busy === 'keeping'} onClick={() => void next()}>
            {w.leaveOut}
          </button>
        </p>
      )}
      {busy && (
        <p className="note import-busy">
          <output>{w.stages[busy](file ?? '')}</output>{' '}
          {busy !== 'keeping' && (
            <button type="button" className="plain-button" onClick={stop}>
              {w.cancel}
            </button>
          )}
        </p>
      )}
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
              <Picture
                key={picture.sheet ?? ''}
                picture={picture}
                correct={
                  proposed.proposal.match?.kind === 'counts'
                    ? (correction) => void asking({ ask: 'correct', correction, answers })
                    : null
                }
              />
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
              <button
                type="button"
                className="button primary"
                disabled={busy !== null}
                onClick={() => void asking({ ask: 'apply', answers })}
              >
                {w.preview}
              </button>
            </section>
          )}
        </>
      )}
      {applied && (
        <Becomes
          applied={applied}
          busy={busy !== null}
          keep={() => void keep()}
          back={applied.match === null ? null : () => setApplied(null)}
        />
      )}
      <Earlier imports={earlier} />
    </Frame>
  );
}

const MOST_SHOWN = 50;
/** As much as the server takes in one go. */
const MOST_BYTES = 64 * 1024 * 1024;

const tooLarge = (file: string, bytes: number): Problem => ({
  where: { file },
  got: w.megabytes(Math.round(bytes / 1024 / 1024)),
  expected: w.atMost(w.megabytes(64)),
  fix: w.split,
});

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
          accept=".csv,.tsv,.txt,.xlsx,.xls,.ods,.zip"
          multiple
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
