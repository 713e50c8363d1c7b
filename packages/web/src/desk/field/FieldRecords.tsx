import type { FieldView, RecordKind } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { dayText } from '../../format/day.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { useDesk } from '../../shared/record/desk.ts';
import { Editor } from '../../shared/record/Editor.tsx';
import { keyOfValue } from '../../shared/record/naming.ts';
import { recordsQuery } from '../../shared/record/queries.ts';
import { samplingRules } from '../../shared/record/SamplingAside.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { stageName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Panel } from '../../ui/Panel.tsx';

type Recorded = 'stages' | 'samples' | 'treatments' | 'decisions';
const KINDS = ['stages', 'samples', 'treatments', 'decisions'] as const satisfies readonly Recorded[];

/** Writes down what happens in a field, and leads to the history of what was written. */
export function FieldRecords({ view }: { view: FieldView }) {
  const w = recordWords.record;
  const [recording, record] = useState<Recorded | null>(null);
  const mayWrite = useMayWrite();
  const waits = useDesk().entries.filter(({ state, revision }) => {
    const { value } = revision;
    return state === 'pending' && value !== null && 'fieldId' in value && value.fieldId === view.field.fieldId;
  }).length;
  const labels = { stages: w.stage, samples: w.sample, treatments: w.treatment, decisions: w.decision };
  return (
    <section className="field-records" aria-label={w.title}>
      <p className="actions">
        <span className="shown">{w.title}</span>
        {KINDS.filter(mayWrite).map((kind) => (
          <button key={kind} type="button" className="button" onClick={() => record(kind)}>
            {labels[kind]}
          </button>
        ))}
        <HistoryButton kind="fields" recordKey={view.field.fieldId} text={mayWrite('fields') ? w.editField : w.fieldHistory} />
        {waits > 0 && <span className="not-sent">{recordWords.unsent(waits)}</span>}
      </p>
      <SeasonRecords view={view} />
      {recording && <Recording kind={recording} view={view} close={() => record(null)} />}
    </section>
  );
}

function SeasonRecords({ view }: { view: FieldView }) {
  const w = recordWords.record;
  const wording = useWording();
  const { fieldId, crop } = view.field;
  const records = [
    ...view.stages.map(({ stage, observedOn }) => ({
      on: observedOn,
      kind: 'stages' as const,
      key: `${fieldId}|${observedOn}`,
      said: stageName(crop, stage),
    })),
    ...view.insects.flatMap(({ insect, samples, treatments, decisions }) => [
      ...samples.map((each) => ({
        on: each.sampledOn,
        kind: 'samples' as const,
        key: `${fieldId}|${insect.id}|${each.sampledOn}|${each.kind}`,
        said: `${wording.insect(insect.id)}: ${each.infested ?? recordWords.nothing} / ${each.examined} ${each.kind}`,
      })),
      ...decisions.map((each) => ({
        on: each.decidedOn,
        kind: 'decisions' as const,
        key: `${fieldId}|${insect.id}|${each.decidedOn}|${each.decision}`,
        said: `${wording.insect(insect.id)}: ${wording.decision[each.decision]}, ${wording.decisionReason[each.reason]}`,
      })),
      ...treatments.map((each) => ({
        on: each.appliedOn,
        kind: 'treatments' as const,
        key: `${fieldId}|${insect.id}|${each.appliedOn}|${each.product}`,
        said: `${wording.insect(insect.id)}: ${each.product}`,
      })),
    ]),
  ].sort((a, b) => b.on.localeCompare(a.on));
  if (records.length === 0) return null;
  return (
    <Folded title={w.recorded(records.length)}>
      <ul className="season-records">
        {records.map(({ on, kind, key, said }) => (
          <li key={`${kind}|${key}`}>
            <span>{dayText(on)}</span>
            <span>{recordWords.kinds[kind]}</span>
            <span>{said}</span>
            <HistoryButton kind={kind} recordKey={key} />
          </li>
        ))}
      </ul>
    </Folded>
  );
}

function Recording({ kind, view, close }: { kind: Recorded; view: FieldView; close: () => void }) {
  const { data } = useQuery(recordsQuery(kind));
  const { field, on } = view;
  const kept = { fieldId: field.fieldId };
  const taken = new Map(
    (data ?? []).map((each) => [
      keyOfValue(kind, each.value),
      { base: { recordId: each.recordId, revisionId: each.revisionId }, value: each.value },
    ]),
  );
  const title = recordWords.titles.add[kind];
  const shared = { kept, held: null, close };
  const [most] = [...view.insects].sort((a, b) => urgency(a.advice.verb) - urgency(b.advice.verb));
  const insect = most?.insect.id ?? '';
  const [rule] = samplingRules(field, insect);
  return (
    <Panel title={title} close={close}>
      {kind === 'stages' && <Editor kind="stages" start={{ observedOn: on }} taken={taken as TakenOf<'stages'>} {...shared} />}
      {kind === 'samples' && (
        <Editor
          kind="samples"
          start={{ insect, sampledOn: on, kind: rule?.unit ?? 'plants', ...(rule ? { unitsExamined: rule.examine.units } : {}) }}
          taken={taken as TakenOf<'samples'>}
          {...shared}
        />
      )}
      {kind === 'treatments' && (
        <Editor kind="treatments" start={{ insect, appliedOn: on }} taken={taken as TakenOf<'treatments'>} {...shared} />
      )}
      {kind === 'decisions' && (
        <Editor
          kind="decisions"
          start={{ insect, decidedOn: on, decision: most?.advice.verb === 'scout' ? 'not-scouted' : 'not-treated' }}
          taken={taken as TakenOf<'decisions'>}
          {...shared}
        />
      )}
    </Panel>
  );
}

type TakenOf<K extends RecordKind> = NonNullable<Parameters<typeof Editor<K>>[0]['taken']>;

/** The insect that somebody is most likely here for comes first. */
const ORDER = ['scout', 'decide', 'blind', 'covered', 'watch', 'none'];
const urgency = (verb: string): number => ORDER.indexOf(verb);
