import type { TrapRecord, TrapView } from '@duskwatch/core';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { Aside } from '../../shared/record/Aside.tsx';
import { controlsFor } from '../../shared/record/controls.ts';
import type { Change } from '../../shared/record/desk.ts';
import { formTextsOf } from '../../shared/record/form-texts.ts';
import { RecordForm } from '../../shared/record/RecordForm.tsx';
import { useAround } from '../../shared/record/useAround.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import type { Base } from '../../sync/types.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { endedOn, lureAlong, nextTrapId } from './moving.ts';

export interface HeldTrap {
  readonly base: Base;
  readonly value: TrapRecord;
}

export function MoveForm({ trap, held, close }: { trap: TrapView; held: HeldTrap; close: () => void }) {
  const { around, names } = useAround();
  const say = useWriteRecords();
  const navigate = useNavigate();
  const [along, take] = useState(true);
  const lure = trap.lures[0] ?? null;
  const { value } = held;
  const start = {
    ...value,
    trapId: nextTrapId(value.trapId, new Set(around.traps.map(({ trapId }) => trapId))),
    latitude: null,
    longitude: null,
    hungOn: trap.on,
  };
  const { takenDownOn: _, ...boxes } = start;
  const save = async (next: TrapRecord) => {
    const ended: Change = { kind: 'traps', value: endedOn(value, next.hungOn), base: held.base, before: value };
    const begun: Change = { kind: 'traps', value: next, base: null, before: null };
    const withLure: Change[] =
      lure && along ? [{ kind: 'lures', value: lureAlong(lure, next.trapId), base: null, before: null }] : [];
    const done = await say(w.move.done(value.trapId, next.trapId), ended, begun, ...withLure);
    if (done) void navigate({ to: '/traps/$trapId', params: { trapId: next.trapId }, search: {} });
    return done;
  };
  return (
    <>
      <p className="panel-lead">{w.move.why}</p>
      <RecordForm
        kind="traps"
        start={formTextsOf('traps', boxes)}
        kept={{ takenDownOn: null }}
        fresh
        around={around}
        controls={controlsFor('traps', value, around, names.wording)}
        aside={(draft) => <Aside kind="traps" draft={draft} field={null} />}
        saveLabel={w.move.save}
        save={save}
        close={close}
        more={
          lure && (
            <label className="tick">
              <input type="checkbox" checked={along} onChange={(event) => take(event.currentTarget.checked)} />
              <span>{w.move.lure}</span>
            </label>
          )
        }
      />
    </>
  );
}
