import type { IsoDay, RoundTrap } from '@duskwatch/core';
import { nightsCounted } from '../../shared/check/odd-count.ts';
import { type Change, OFFERED_REASONS, type UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import { roundWords as w } from '../../text/round.ts';
import { visitWords } from '../../text/visit.ts';
import { capital } from '../shared/figures.ts';

interface Props {
  readonly draft: UnsavedCheck;
  readonly change: Change;
  readonly trap: RoundTrap;
  readonly on: IsoDay;
}

/** Stands where the pad was, so that no zero can be written: what is wrong, and what becomes of the nights. */
export function Unfit({ draft, change, trap, on }: Props) {
  const v = visitWords.unfit;
  const nights = nightsCounted(trap, on);
  return (
    <div className="what">
      <h2 id="what">{w.trap.what}</h2>
      {/* biome-ignore lint/a11y/useSemanticElements: buttons, named as a group; a fieldset would draw a box. */}
      <div className="what-reasons" role="group" aria-labelledby="what">
        {OFFERED_REASONS.map((reason) => (
          <button
            key={reason}
            type="button"
            aria-pressed={draft.unfit === reason}
            onClick={() => change((before) => ({ ...before, unfit: reason }))}
          >
            {capital(w.trap.reasons[reason])}
          </button>
        ))}
      </div>
      <p className="hint">
        {v.gap(nights === 0 ? v.today : v.nights(nights))} {v.afresh}
      </p>
    </div>
  );
}
