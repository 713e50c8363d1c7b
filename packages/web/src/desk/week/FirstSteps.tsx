import type { FirstStep, FirstStepsView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type ReactNode, useState } from 'react';
import { Editor } from '../../shared/record/Editor.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { firstWords as w } from '../../text/first.ts';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';

/** Steps that a form is filled in for; the others have pages of their own. */
const FORMS = ['fields', 'stages', 'traps', 'lures', 'checks'] as const satisfies readonly FirstStep[];
type Form = (typeof FORMS)[number];
const isForm = (step: FirstStep): step is Form => (FORMS as readonly FirstStep[]).includes(step);

/** From an empty program to its first advice: what is there, what is missing, and which advice is missing with it. */
export function FirstSteps({ view: { on, steps } }: { view: FirstStepsView }) {
  const [writing, write] = useState<Form | null>(null);
  // What is needed goes before what makes it surer.
  const open = steps.filter(({ done, of }) => done < of);
  const next = (open.find(({ needed }) => needed) ?? open[0])?.step;
  return (
    <section className="first-steps" aria-labelledby="first-steps">
      <h2 id="first-steps">{w.title}</h2>
      <p>{w.lead}</p>
      <ol>
        {steps.map(({ step, done, of, needed }) => (
          <li
            key={step}
            className={of > 0 && done === of ? 'step-done' : undefined}
            aria-current={step === next ? 'step' : undefined}
          >
            <h3>
              {w.steps[step].title}{' '}
              {of > 0 && <span className="step-state">{done === of ? w.done : step === 'fields' ? '' : w.of(done, of)}</span>}
              {step === next && <span className="step-state">{w.next}</span>}
            </h3>
            <p>{w.steps[step].why}</p>
            {(of === 0 || done < of) && <p className={needed ? 'step-needed' : undefined}>{w.steps[step].without}</p>}
            {of > 0 && (done < of || step === 'fields') && (
              <Act step={step} isNext={step === next} write={() => isForm(step) && write(step)} />
            )}
          </li>
        ))}
      </ol>
      {writing && (
        <Panel title={recordWords.titles.add[writing]} close={() => write(null)}>
          <StepForm step={writing} on={on} close={() => write(null)} />
        </Panel>
      )}
    </section>
  );
}

function Act({ step, isNext, write }: { step: FirstStep; isNext: boolean; write: () => void }) {
  const className = isNext ? 'button primary' : 'button';
  if (step === 'places')
    return (
      <Link to="/map" className={className}>
        {w.steps[step].act}
      </Link>
    );
  if (step === 'weather')
    return (
      <Link to="/program/weather" className={className}>
        {w.steps[step].act}
      </Link>
    );
  return (
    <button type="button" className={className} onClick={write}>
      {w.steps[step].act}
    </button>
  );
}

/** The form of a step, for the first field or trap that it is missing for. */
function StepForm({ step, on, close }: { step: Form; on: string; close: () => void }): ReactNode {
  const { data: fields = [] } = useQuery(recordsQuery('fields'));
  const { data: stages = [] } = useQuery(recordsQuery('stages'));
  const { data: traps = [] } = useQuery(recordsQuery('traps'));
  const { data: lures = [] } = useQuery(recordsQuery('lures'));
  const { data: checks = [] } = useQuery(recordsQuery('checks'));
  const fieldId = fields.map(({ value }) => value.fieldId);
  const uninformed = fieldId.find((id) => !traps.some(({ value }) => value.informs.includes(id)));
  const unstaged = fieldId.find((id) => !stages.some(({ value }) => value.fieldId === id));
  const without = (of: readonly { readonly value: { readonly trapId: string } }[]) =>
    traps.find(({ value: { trapId } }) => !of.some(({ value }) => value.trapId === trapId))?.value ?? traps.at(-1)?.value;
  switch (step) {
    case 'fields':
      return <Editor kind="fields" start={{}} held={null} close={close} />;
    case 'stages': {
      const of = unstaged ?? fieldId.at(-1);
      if (of === undefined) return null;
      return <Editor kind="stages" start={{ observedOn: on }} kept={{ fieldId: of }} held={null} close={close} />;
    }
    case 'traps': {
      const informs = [uninformed ?? fieldId.at(-1)].flatMap((id) => id ?? []);
      return <Editor kind="traps" start={{ hungOn: on, informs }} kept={{ takenDownOn: null }} held={null} close={close} />;
    }
    case 'lures': {
      const trap = without(lures);
      if (trap === undefined) return null;
      return <Editor kind="lures" start={{ placedOn: trap.hungOn }} kept={{ trapId: trap.trapId }} held={null} close={close} />;
    }
    case 'checks': {
      const trap = without(checks);
      if (trap === undefined) return null;
      const kept = { trapId: trap.trapId, visit: 1 };
      return (
        <Editor kind="checks" start={{ checkedOn: on, condition: 'fit', emptied: true }} kept={kept} held={null} close={close} />
      );
    }
  }
}
