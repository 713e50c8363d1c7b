import type { RoundTrap } from '@duskwatch/core';
import { useId } from 'react';
import { shortDay } from '../../format/day.ts';
import type { Change, UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import { roundWords as w } from '../../text/round.ts';
import { Sheet } from '../shared/Sheet.tsx';

export interface LureSheetProps {
  readonly draft: UnsavedCheck;
  readonly change: Change;
  readonly trap: RoundTrap;
}

interface Button {
  readonly name?: string;
  readonly state?: string;
  readonly buttonClass?: string;
}

/** All that can be said of a trap's lure. */
export function LureSheet({ draft, change, trap, ...button }: LureSheetProps & Button) {
  const life = useId();
  const { lure } = trap;
  const age = lure ? w.lure.age(lure.ageDays, lure.lifeDays) : w.lure.none;
  const state = draft.lureChanged ? w.lure.changedShort : age;
  return (
    <Sheet name={w.lure.button} state={state} marked={draft.lureChanged} {...button} title={w.lure.title}>
      <p>{lure ? w.lure.ageLong(lure.ageDays, lure.lifeDays, shortDay(lure.placedOn)) : w.lure.noneLong}</p>
      <button
        type="button"
        className="big toggle"
        aria-pressed={draft.lureChanged}
        onClick={() => change((before) => ({ ...before, lureChanged: !before.lureChanged, lureLeft: false }))}
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
