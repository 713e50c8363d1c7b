import type { RecordKind, RecordOf } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clockWasOff, instantText } from '../../format/instant.ts';
import type { StoredKind } from '../../sync/types.ts';
import { historyWords } from '../../text/history.ts';
import { recordWords } from '../../text/record.ts';
import { renamingWords } from '../../text/renaming.ts';
import { Panel } from '../../ui/Panel.tsx';
import { useDesk } from '../record/desk.ts';
import { Editor } from '../record/Editor.tsx';
import { propertyLabel, propertyText, recordName } from '../record/naming.ts';
import { historyQuery } from '../record/queries.ts';
import { canBeRenamed, RenameForm } from '../record/RenameForm.tsx';
import { useAround } from '../record/useAround.ts';
import { useMayWrite } from '../record/useMayWrite.ts';
import { useWriteRecords } from '../record/write-records.ts';
import { ChangeTable } from './ChangeTable.tsx';
import { baseOver, headOf, isRecord, type Version, versionsOf } from './versions.ts';

/** Properties that name a record or hang on other records: an edit leaves them as they are. */
const FIXED: Readonly<Partial<Record<RecordKind, readonly string[]>>> = {
  fields: ['fieldId'],
  stages: ['fieldId'],
  traps: ['trapId'],
  lures: ['trapId'],
  checks: ['trapId', 'visit', 'photo'],
  skips: ['trapId'],
  samples: ['fieldId', 'photo'],
  treatments: ['fieldId'],
  decisions: ['fieldId', 'insect'],
  seasons: ['season'],
  plans: ['season', 'insect', 'area'],
  prices: ['item', 'of'],
  stock: ['stockId', 'item', 'of'],
  sources: ['sourceId'],
};

/** Everything that was said of one record: who, when, what was before; and the ways on. */
export function HistoryPanel({ kind, recordKey, close }: { kind: StoredKind; recordKey: string; close: () => void }) {
  const w = historyWords;
  const { names } = useAround();
  const { entries } = useDesk();
  const { data, error, refetch } = useQuery(historyQuery(kind, recordKey));
  const [editing, edit] = useState(false);
  const [renaming, rename] = useState(false);
  const versions = versionsOf(kind, recordKey, data ?? [], entries);
  const head = headOf(versions);
  const name = recordName(kind, recordKey, names);
  const title = editing && isRecord(kind) ? editTitle(kind) : renaming ? renamingWords.title(name) : w.of(name);
  return (
    <Panel title={title} close={close}>
      {versions.length === 0 && !error && <p className="absent">{data ? w.none : w.loading}</p>}
      {error && versions.length === 0 && (
        <p className="absent">
          {w.failed}{' '}
          <button type="button" className="plain-button" onClick={() => void refetch()}>
            {w.again}
          </button>
        </p>
      )}
      {renaming && canBeRenamed(kind) ? (
        <RenameForm kind={kind} id={recordKey} close={close} />
      ) : head && editing && isRecord(kind) ? (
        <EditHead kind={kind} head={head} versions={versions} close={() => edit(false)} />
      ) : (
        <>
          {head && <Now head={head} versions={versions} name={name} edit={() => edit(true)} rename={() => rename(true)} />}
          {versions.length > 0 && (
            <section className="versions">
              <h3>{w.said(versions.length)}</h3>
              <ol>
                {versions.map((version) => (
                  <VersionLine key={version.said.revisionId} version={version} versions={versions} name={name} />
                ))}
              </ol>
            </section>
          )}
        </>
      )}
    </Panel>
  );
}

const editTitle = (kind: RecordKind): string =>
  (recordWords.titles.edit as Partial<Record<RecordKind, string>>)[kind] ?? recordWords.kinds[kind];

const hasForm = (kind: StoredKind): boolean => kind in recordWords.titles.edit;

function Now(props: { head: Version; versions: readonly Version[]; name: string; edit: () => void; rename: () => void }) {
  const { head, versions, name, edit, rename } = props;
  const mayWrite = useMayWrite();
  const w = historyWords;
  const { names } = useAround();
  const say = useWriteRecords();
  const { kind, value } = head.said;
  if (value === null) return <p className="absent">{w.removedNow}</p>;
  const remove = () => say(recordWords.toast.removed(name), { kind, value: null, base: baseOver(versions, head), before: value });
  return (
    <section className="now">
      <h3>{w.now}</h3>
      <dl>
        {Object.entries(value).map(([property, held]) => (
          <div key={property}>
            <dt>{propertyLabel(kind, property)}</dt>
            <dd>{propertyText(kind, property, held, value, names)}</dd>
          </div>
        ))}
      </dl>
      <p className="actions">
        {hasForm(kind) && (
          <button type="button" className="button" onClick={edit}>
            {w.edit}
          </button>
        )}
        {canBeRenamed(kind) && mayWrite(kind) && (
          <button type="button" className="button" onClick={rename}>
            {renamingWords.open}
          </button>
        )}
        {isRecord(kind) && (
          <button type="button" className="plain-button" onClick={() => void remove()}>
            {w.remove}
          </button>
        )}
      </p>
    </section>
  );
}

function EditHead(props: { kind: RecordKind; head: Version; versions: readonly Version[]; close: () => void }) {
  const { kind, head, versions, close } = props;
  const value = head.said.value as RecordOf<RecordKind> | null;
  if (value === null) return null;
  const fixed = FIXED[kind] ?? [];
  const kept = Object.fromEntries(Object.entries(value).filter(([property]) => fixed.includes(property)));
  return (
    <Editor
      kind={kind}
      start={value}
      kept={kept as Partial<RecordOf<RecordKind>>}
      held={{ base: baseOver(versions, head), value }}
      close={close}
    />
  );
}

function VersionLine({ version, versions, name }: { version: Version; versions: readonly Version[]; name: string }) {
  const w = historyWords;
  const { names } = useAround();
  const say = useWriteRecords();
  const { said, standing, changes, notSent } = version;
  const who = said.authorName ?? w.notSent;
  const when = instantText(said.at);
  const before = versions.find((each) => each.said.revisionId === said.baseRevisionId)?.said.value ?? null;
  const head = headOf(versions);
  // What it says stands above already.
  const alone = said.baseRevisionId === null && head === version;
  const restorable = said.value !== null && head !== null && head.said.revisionId !== said.revisionId;
  const restore = () => {
    if (!head) return;
    const change = { kind: said.kind, value: said.value, base: baseOver(versions, head), before: head.said.value };
    void say(recordWords.toast.restored(name), change);
  };
  return (
    <li className={`version version-${standing}`}>
      <p className="version-head">
        <b>{w.by(who, when)}</b> <span className="standing">{w.standing[standing]}</span>
      </p>
      {notSent && said.authorName !== null && <p className="absent">{w.notSent}</p>}
      {clockWasOff(said) && <p className="hint">{w.countedAt(instantText(said.countedAt))}</p>}
      {said.value === null ? (
        <p>{w.removed}</p>
      ) : said.baseRevisionId === null ? (
        <p>{alone ? w.firstAlone : w.first}</p>
      ) : changes.length === 0 ? (
        <p>{w.unchanged}</p>
      ) : null}
      {said.value !== null && changes.length > 0 && !alone && (
        <ChangeTable kind={said.kind} changes={changes} before={before} after={said.value} names={names} />
      )}
      {restorable && (
        <button type="button" className="button" aria-label={w.restoreOf(who, when)} onClick={restore}>
          {w.restore}
        </button>
      )}
    </li>
  );
}
