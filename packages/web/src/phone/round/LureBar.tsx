import type { UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import { visitWords } from '../../text/visit.ts';
import { LureSheet, type LureSheetProps } from './LureSheet.tsx';

/** A lure that is due asks once, above the pad, with two answers; a tap on its name opens what else there is to say of it. */
export function LureBar({ draft, change, trap, asked }: LureSheetProps & { readonly asked: boolean }) {
  const w = visitWords.lure;
  const answer = (given: Pick<UnsavedCheck, 'lureChanged' | 'lureLeft'>) => change((before) => ({ ...before, ...given }));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of two answers, named as a group; a fieldset would draw a box.
    <div className={`lure-bar${asked ? ' is-asked' : ''}`} role="group" aria-label={w.due}>
      <LureSheet
        {...{ draft, change, trap }}
        name={draft.lureChanged ? w.fresh(draft.lureLifeDays) : w.due}
        state={draft.lureChanged ? w.gloves : w.age(trap.lure!.ageDays, trap.lure!.lifeDays)}
        buttonClass="lure-name"
      />
      <button
        type="button"
        aria-pressed={draft.lureChanged}
        onClick={() => answer({ lureChanged: !draft.lureChanged, lureLeft: false })}
      >
        {w.changed}
      </button>
      <button
        type="button"
        aria-pressed={draft.lureLeft}
        onClick={() => answer({ lureChanged: false, lureLeft: !draft.lureLeft })}
      >
        {w.notToday}
      </button>
    </div>
  );
}
