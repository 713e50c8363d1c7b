/** The form of one record, new or as it now is. */
import type { RecordKind, RecordOf } from '@duskwatch/core';
import type { ReactNode } from 'react';
import type { Base } from '../../sync/types.ts';
import { recordWords } from '../../text/record.ts';
import { Aside } from './Aside.tsx';
import { controlsFor } from './controls.ts';
import { type FormTexts, formTextsOf, readForm } from './form-texts.ts';
import { keyOfValue, recordName } from './naming.ts';
import { RecordForm } from './RecordForm.tsx';
import { useAround } from './useAround.ts';
import { useWriteRecords } from './write-records.ts';

export interface EditorProps<K extends RecordKind> {
  readonly kind: K;
  /** What the boxes hold at first. */
  readonly start: Partial<RecordOf<K>>;
  readonly kept?: Partial<RecordOf<K>>;
  /** The record that is edited; null: a new one. */
  readonly held: { readonly base: Base; readonly value: RecordOf<K> | null } | null;
  /** Keys that are taken, with what to build on: a new record of one of them is an edit of it. */
  readonly taken?: ReadonlyMap<string, { readonly base: Base; readonly value: RecordOf<K> }>;
  readonly children?: ReactNode;
  readonly close: () => void;
}

export function Editor<K extends RecordKind>({ kind, start, kept, held, taken, children, close }: EditorProps<K>) {
  const { around, names } = useAround();
  const say = useWriteRecords();
  const all = { ...start, ...kept } as Partial<RecordOf<K>> & { readonly fieldId?: string };
  const field = all.fieldId === undefined ? null : (names.fields.get(all.fieldId) ?? null);
  const isTaken = (draft: FormTexts) => {
    const { value } = readForm(kind, draft, { ...(kept ? { kept } : {}), around });
    return value !== null && taken?.has(keyOfValue(kind, value)) === true;
  };
  return (
    <RecordForm
      kind={kind}
      start={formTextsOf(kind, start)}
      {...(kept ? { kept } : {})}
      around={around}
      fresh={held === null && taken === undefined}
      controls={controlsFor(kind, all, around, names.wording)}
      aside={(draft) => (
        <>
          {taken && isTaken(draft) && <p className="replaces">{recordWords.replaces}</p>}
          <Aside kind={kind} draft={draft} field={field} />
        </>
      )}
      more={children}
      close={close}
      save={async (value) => {
        const key = keyOfValue(kind, value);
        const over = held ?? taken?.get(key) ?? null;
        const change = { kind, value, base: over?.base ?? null, before: over?.value ?? null };
        return say(recordWords.toast.saved(recordName(kind, key, names)), change);
      }}
    />
  );
}
