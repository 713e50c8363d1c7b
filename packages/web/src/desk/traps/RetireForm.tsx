import { checkOfVisit, type TrapView } from '@duskwatch/core';
import { formTextsOf } from '../../shared/record/form-texts.ts';
import { RecordForm } from '../../shared/record/RecordForm.tsx';
import { useAround } from '../../shared/record/useAround.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { trapsWords as w } from '../../text/traps.ts';
import type { HeldTrap } from './MoveForm.tsx';

export function RetireForm({ trap, held, close }: { trap: TrapView; held: HeldTrap; close: () => void }) {
  const { around } = useAround();
  const say = useWriteRecords();
  const { value } = held;
  const { takenDownOn, ...kept } = value;
  const last = trap.lastVisit;
  // The newest check is judged along, so that a trap is not taken down before it.
  const checks = last ? [checkOfVisit(value.trapId, last)] : [];
  return (
    <>
      <p className="panel-lead">{w.retire.text}</p>
      <RecordForm
        kind="traps"
        start={formTextsOf('traps', { takenDownOn: takenDownOn ?? trap.on })}
        kept={kept}
        demanded={() => ['takenDownOn']}
        around={{ ...around, checks }}
        saveLabel={w.retire.save}
        close={close}
        save={(next) => say(w.retire.done(value.trapId), { kind: 'traps', value: next, base: held.base, before: value })}
      />
    </>
  );
}
