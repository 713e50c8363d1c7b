/** The form of one record, new or as it now is. */
import { canonicalCrop, catalogue, type FieldRecord, type RecordKind, type RecordOf } from '@duskwatch/core';
import { type ReactNode, useState } from 'react';
import type { Base } from '../../sync/types.ts';
import { insectName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { Aside } from './Aside.tsx';
import { Control } from './Control.tsx';
import { controlsFor } from './controls.ts';
import { type FormTexts, formTextsOf, readForm } from './form-texts.ts';
import { identifierFor } from './identifier.ts';
import { keyOfValue, recordName } from './naming.ts';
import { ofWhat } from './of-what.ts';
import { RecordForm } from './RecordForm.tsx';
import type { Taken } from './taken.ts';
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
  readonly taken?: Taken<K>;
  readonly children?: ReactNode;
  readonly close: () => void;
}

/** As a person tells it: what was done, when, how much and by whom, then what the label says; what a source is, then where. */
const ORDER: Partial<Readonly<Record<RecordKind, readonly string[]>>> = {
  treatments: ['product', 'productUnknown', 'insect', 'appliedOn', 'appliedAt', 'rate', 'rateUnit', 'applicator'],
  fields: ['farm', 'name', 'crop', 'fieldId'],
  traps: ['station', 'insect', 'trapId'],
  sources: ['name', 'sourceId', 'kind', 'service', 'termsSeenOn', 'stationId', 'address', 'fetching'],
};

export function Editor<K extends RecordKind>({ kind, start, kept, held, taken, children, close }: EditorProps<K>) {
  const { around, names } = useAround();
  const say = useWriteRecords();
  const [also, setAlso] = useState('');
  const all = { ...start, ...kept } as Partial<RecordOf<K>> & { readonly fieldId?: string };
  const field = all.fieldId === undefined ? null : (names.fields.get(all.fieldId) ?? null);
  const isTaken = (draft: FormTexts) => {
    const { value } = readForm(kind, draft, { ...(kept ? { kept } : {}), around });
    return value !== null && taken?.has(keyOfValue(kind, value)) === true;
  };
  // One treatment may be against several insects: each is a record of its own, and all are kept or none.
  const several = kind === 'treatments' && held === null;
  return (
    <RecordForm
      kind={kind}
      start={formTextsOf(kind, start)}
      {...(kept ? { kept } : {})}
      around={around}
      fresh={held === null && taken === undefined}
      controls={controlsFor(kind, all, around, names.wording)}
      order={ORDER[kind] ?? []}
      {...(held === null && { derived: (draft) => identifierFor(kind, draft, around) })}
      demanded={(draft) => (kind === 'treatments' && draft.productUnknown !== 'yes' ? (['product'] as never[]) : [])}
      of={(draft) => ofWhat(kind, { ...draft, ...kept }, around)}
      aside={(draft) => (
        <>
          {taken && isTaken(draft) && <p className="replaces">{recordWords.replaces}</p>}
          <Aside kind={kind} draft={{ ...(all as FormTexts), ...draft }} field={field} />
        </>
      )}
      more={
        <>
          {several && <AlsoAgainst field={field} text={also} write={setAlso} />}
          {children}
        </>
      }
      close={close}
      save={async (value) => {
        const values = several ? [value, ...againstOthers(value as RecordOf<'treatments'>, also)] : [value];
        const changes = (values as RecordOf<K>[]).map((each) => {
          const over = held ?? taken?.get(keyOfValue(kind, each)) ?? null;
          return { kind, value: each, base: over?.base ?? null, before: over?.value ?? null };
        });
        return say(recordWords.toast.saved(recordName(kind, keyOfValue(kind, value), names)), ...changes);
      }}
    />
  );
}

const againstOthers = (value: RecordOf<'treatments'>, also: string): RecordOf<'treatments'>[] =>
  also
    .split(';')
    .filter((insect) => insect !== '' && insect !== value.insect)
    .map((insect) => ({ ...value, insect }));

function AlsoAgainst({ field, text, write }: { field: FieldRecord | null; text: string; write: (text: string) => void }) {
  const crop = field && canonicalCrop(field.crop);
  const options = catalogue.insects
    .filter(({ hosts, feedsOn }) => crop === null || hosts.includes(crop) || feedsOn.includes(crop))
    .map(({ id }) => ({ value: id, label: insectName(id) }));
  return (
    <Control
      name="also"
      control={{ as: 'several', options }}
      text={text}
      write={write}
      label={recordWords.also}
      hint={recordWords.alsoHint}
      needed={false}
      problems={[]}
    />
  );
}
