import type { IsoDay, RoundField, RoundStop, RoundTrap } from '@duskwatch/core';
import { useId } from 'react';
import { shortDay } from '../../format/day.ts';
import type { Change, UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { capital, local } from '../shared/figures.ts';
import { Sheet } from '../shared/Sheet.tsx';
import { ofKind } from '../shared/written.ts';
import { PhotoSheet } from './PhotoSheet.tsx';

interface Props {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly on: IsoDay;
  readonly trap: RoundTrap;
  readonly stop: RoundStop;
  readonly draft: UnsavedCheck;
  readonly change: Change;
  readonly photoOpen: boolean;
}

/** What a visit may need beyond the count: nothing in here is asked for, and nothing is assumed. */
export function Extras(props: Props) {
  const { draft, change, device, photoOpen } = props;
  return (
    <div className="extras">
      <button
        type="button"
        className="extra"
        aria-pressed={draft.emptied}
        onClick={() => change((before) => ({ ...before, emptied: !before.emptied }))}
      >
        <span>{draft.emptied ? w.trap.emptied : w.trap.left_}</span>
        {!draft.emptied && <small>{w.trap.leftIn}</small>}
      </button>
      <StageSheet {...props} />
      <PhotoSheet key={String(photoOpen)} draft={draft} change={change} device={device} open={photoOpen} />
      <NoteSheet {...props} />
    </div>
  );
}

function StageSheet(props: Props) {
  const { draft, stop } = props;
  const seen = stop.fields.map((field) => stageNow(field, props)).filter((stage) => stage !== null);
  const marked = Object.values(draft.stages).some(Boolean);
  return (
    <Sheet name={w.stage.button} state={seen.join(', ') || w.stage.unknown} marked={marked} title={w.stage.title}>
      {stop.fields.length === 0 && <p>{w.stage.noField}</p>}
      {stop.fields.map((field) => (
        <FieldStage key={field.fieldId} field={field} {...props} />
      ))}
    </Sheet>
  );
}

/** The stage chosen now, else as recorded earlier in this round, else as the server last had it. */
function stageNow(field: RoundField, { draft, state, on }: Props): string | null {
  const own = ofKind(state.written, 'stages').findLast(({ key, value }) => value !== null && key === `${field.fieldId}|${on}`);
  const stage = draft.stages[field.fieldId] || own?.last.stage || field.stage?.stage;
  return stage ? stageWord(field, stage) : null;
}

function stageWord({ stages }: RoundField, stage: string): string {
  const known = stages.find(({ id }) => id === stage);
  return known ? local(known.name) : stage.replaceAll('-', ' ');
}

function FieldStage({ field, draft, change }: Props & { field: RoundField }) {
  const { fieldId, name, stage, stages } = field;
  const set = (chosen: string) => change((before) => ({ ...before, stages: { ...before.stages, [fieldId]: chosen } }));
  return (
    <section className="field-stage">
      <h3>{name}</h3>
      <p className="hint">{stage ? w.stage.seen(stageWord(field, stage.stage), shortDay(stage.observedOn)) : w.stage.never}</p>
      {stages.length === 0 && <p>{w.stage.noCrop}</p>}
      {/* biome-ignore lint/a11y/useSemanticElements: a row of toggle buttons, named as a group; a fieldset would draw a box. */}
      <div className="choices wrap" role="group" aria-label={name}>
        {stages.map(({ id, name: word }) => (
          <button
            key={id}
            type="button"
            aria-pressed={draft.stages[fieldId] === id}
            onClick={() => set(draft.stages[fieldId] === id ? '' : id)}
          >
            {capital(local(word))}
          </button>
        ))}
      </div>
    </section>
  );
}

function NoteSheet({ draft, change }: Props) {
  const id = useId();
  return (
    <Sheet name={w.note.button} {...(draft.note && { state: w.note.written })} marked={draft.note !== ''} title={w.note.title}>
      <label htmlFor={id} className="unseen">
        {w.note.label}
      </label>
      <textarea
        id={id}
        rows={4}
        maxLength={1_900}
        value={draft.note}
        onChange={(event) => {
          const { value } = event.currentTarget;
          change((before) => ({ ...before, note: value }));
        }}
      />
    </Sheet>
  );
}
