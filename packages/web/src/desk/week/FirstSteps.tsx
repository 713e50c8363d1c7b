import type { IsoDay } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Editor } from '../../shared/record/Editor.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { firstWords as w } from '../../text/first.ts';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';

const STEPS = ['fields', 'stages', 'traps', 'lures', 'checks'] as const;
type Step = (typeof STEPS)[number];

/** Without them there is no advice; the stage and the lure make it surer. */
const NEEDED: readonly Step[] = ['fields', 'traps', 'checks'];

/** From an empty program to its first advice, record by record. */
export function FirstSteps({ on }: { on: IsoDay }) {
  const records = {
    fields: useQuery(recordsQuery('fields')).data,
    stages: useQuery(recordsQuery('stages')).data,
    traps: useQuery(recordsQuery('traps')).data,
    lures: useQuery(recordsQuery('lures')).data,
    checks: useQuery(recordsQuery('checks')).data,
  };
  const [writing, write] = useState<Step | null>(null);
  const done = (step: Step) => (records[step]?.length ?? 0) > 0;
  const next = STEPS.find((step) => !done(step));
  const may = (step: Step) => NEEDED.every((each) => STEPS.indexOf(each) >= STEPS.indexOf(step) || done(each));
  const close = () => write(null);
  const field = records.fields?.at(-1)?.value;
  const trap = records.traps?.at(-1)?.value;
  const fieldId = field?.fieldId;
  const trapId = trap?.trapId;
  const hungOn = trap?.hungOn;
  const forms: Readonly<Record<Step, ReactNode>> = {
    fields: <Editor kind="fields" start={{}} held={null} close={close} />,
    stages: fieldId !== undefined && (
      <Editor kind="stages" start={{ observedOn: on }} kept={{ fieldId }} held={null} close={close} />
    ),
    traps: (
      <Editor
        kind="traps"
        start={{ hungOn: on, informs: fieldId === undefined ? [] : [fieldId] }}
        kept={{ takenDownOn: null }}
        held={null}
        close={close}
      />
    ),
    lures: trapId !== undefined && (
      <Editor kind="lures" start={{ placedOn: hungOn ?? on }} kept={{ trapId }} held={null} close={close} />
    ),
    checks: trapId !== undefined && (
      <Editor
        kind="checks"
        start={{ checkedOn: on, condition: 'fit', emptied: true }}
        kept={{ trapId, visit: 1 }}
        held={null}
        close={close}
      />
    ),
  };
  return (
    <section className="first-steps" aria-labelledby="first-steps">
      <h2 id="first-steps">{w.title}</h2>
      <p>{w.lead}</p>
      <ol>
        {STEPS.map((step) => (
          <li key={step} className={done(step) ? 'step-done' : undefined} aria-current={step === next ? 'step' : undefined}>
            <h3>
              {w.steps[step].title} {done(step) && <span className="step-state">{w.done}</span>}
              {step === next && <span className="step-state">{w.next}</span>}
            </h3>
            <p>{w.steps[step].why}</p>
            {!done(step) && may(step) && (
              <button type="button" className={step === next ? 'button primary' : 'button'} onClick={() => write(step)}>
                {w.steps[step].act}
              </button>
            )}
          </li>
        ))}
      </ol>
      {writing && (
        <Panel title={recordWords.titles.add[writing]} close={close}>
          {forms[writing]}
        </Panel>
      )}
    </section>
  );
}
