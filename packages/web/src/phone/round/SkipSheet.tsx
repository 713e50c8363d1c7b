import type { SkipReason } from '@duskwatch/core';
import { useState } from 'react';
import { roundWords as w } from '../../text/round.ts';
import { OFFERED_SKIPS } from '../shared/progress.ts';
import { Sheet } from '../shared/Sheet.tsx';

interface Props {
  readonly trapId: string;
  /** Traps still open at this station. */
  readonly open: readonly string[];
  readonly skip: (trapIds: readonly string[], reason: SkipReason) => Promise<void>;
}

export function SkipSheet({ trapId, open, skip }: Props) {
  const [whole, setWhole] = useState(true);
  const several = open.length > 1;
  const trapIds = several && whole ? open : [trapId];
  return (
    <Sheet
      name={w.trap.skip}
      buttonClass="big narrow"
      title={w.skipSheet.title}
      foot={(close) => (
        <button type="button" className="big" onClick={close}>
          {w.sheet.close}
        </button>
      )}
    >
      <p className="hint">{w.skipSheet.text}</p>
      {several && (
        <div className="choices two">
          <button type="button" aria-pressed={whole} onClick={() => setWhole(true)}>
            {w.skipSheet.whole(open.length)}
          </button>
          <button type="button" aria-pressed={!whole} onClick={() => setWhole(false)}>
            {w.skipSheet.one(trapId)}
          </button>
        </div>
      )}
      <div className="choices two">
        {OFFERED_SKIPS.map((reason) => (
          <button key={reason} type="button" onClick={() => void skip(trapIds, reason)}>
            {w.skipSheet.reasons[reason]}
          </button>
        ))}
      </div>
    </Sheet>
  );
}
