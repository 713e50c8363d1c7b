import type { IsoDay, RoundField, RoundStop, RoundTrap } from '@duskwatch/core';
import { useId } from 'react';
import { shortDay } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { capital, heightText, local } from '../shared/figures.ts';
import type { UnsavedCheck } from '../shared/unsaved-check.ts';
import { ofKind } from '../shared/written.ts';
import { PhotoSheet } from './PhotoSheet.tsx';
import { Sheet } from './Sheet.tsx';

interface Props {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly on: IsoDay;
  readonly trap: RoundTrap;
  readonly stop: RoundStop;
  readonly draft: UnsavedCheck;
  readonly change: (make: (before: UnsavedCheck) => UnsavedCheck) => void;
}

/** What a visit may need beyond the count: nothing in here is asked for, and nothing is assumed. */
export function Extras(props: Props) {
  const { draft, change, trap, device } = props;
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
      <LureSheet {...props} />
      <StageSheet {...props} />
      <PhotoSheet draft={draft} change={change} device={device} />
      <NoteSheet {...props} />
      <HelpSheet trap={trap} />
    </div>
  );
}

function LureSheet({ draft, change, trap }: Props) {
  const life = useId();
  const { lure } = trap;
  const age = lure ? w.lure.age(lure.ageDays, lure.lifeDays) : w.lure.none;
  const state = draft.lureChanged ? w.lure.changedShort : lure?.change ? w.lure.due : age;
  return (
    <Sheet name={w.lure.button} state={state} marked={draft.lureChanged || lure?.change === true} title={w.lure.title}>
      <p>{lure ? w.lure.ageLong(lure.ageDays, lure.lifeDays, shortDay(lure.placedOn)) : w.lure.noneLong}</p>
      <button
        type="button"
        className="big toggle"
        aria-pressed={draft.lureChanged}
        onClick={() => change((before) => ({ ...before, lureChanged: !before.lureChanged }))}
      >
        {w.lure.changed}
      </button>
      {draft.lureChanged && (
        <div className="entry">
          <label htmlFor={life}>{w.lure.life}</label>
          <input
            id={life}
            type="number"
            inputMode="numeric"
            min={1}
            max={400}
            value={draft.lureLifeDays ?? ''}
            onChange={(event) => {
              const days = Math.round(event.currentTarget.valueAsNumber);
              change((before) => ({ ...before, lureLifeDays: days >= 1 ? Math.min(days, 400) : null }));
            }}
          />
          <p className="hint">{w.lure.lifeHelp}</p>
        </div>
      )}
      <p className="caution">{w.lure.gloves}</p>
    </Sheet>
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

function HelpSheet({ trap }: { trap: RoundTrap }) {
  const live = trap.design === 'mesh-cone' || trap.design === 'wire-cone' || trap.design === 'bucket';
  return (
    <Sheet name={w.help.button} title={w.help.title}>
      <h3>{w.help.target}</h3>
      <p>
        {capital(local(trap.insectName))}, <i>{trap.scientificName}</i>
      </p>
      <h3>{w.help.notThese}</h3>
      {trap.lookAlikes.length === 0 && <p>{w.help.noLookAlikes}</p>}
      <dl>
        {trap.lookAlikes.map(({ name, note }) => (
          <div key={name.en}>
            <dt>{capital(local(name))}</dt>
            <dd>{local(note)}</dd>
          </div>
        ))}
      </dl>
      <p>{w.help.unsure}</p>
      {live && (
        <>
          <h3>{w.help.live}</h3>
          <p className="caution">{w.help.liveText}</p>
        </>
      )}
      <h3>{w.help.keep}</h3>
      {trap.heightM !== null && <p>{w.help.heightText(heightText(trap.heightM))}</p>}
      <p>{w.help.growth}</p>
    </Sheet>
  );
}
