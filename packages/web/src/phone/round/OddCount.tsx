import { useEffect, useId, useRef } from 'react';
import { visitWords } from '../../text/visit.ts';
import { whole } from '../shared/figures.ts';

interface Odd {
  /** Which way it is off. */
  readonly side: 'high' | 'low';
  readonly last: number;
  readonly now: number;
  readonly most: number | null;
  /** Last counts of other traps for the same insect. */
  readonly around: readonly number[];
}

interface Props {
  readonly odd: Odd;
  readonly yes: () => void;
  readonly photo: () => void;
  readonly no: () => void;
}

/** A count that is far off is asked about at the trap, where one can still look. Both answers weigh the same. */
export function OddCount({ odd, yes, photo, no }: Props) {
  const w = visitWords.odd;
  const heading = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className="sheet odd" aria-labelledby={heading} onCancel={no}>
      <div className="sheet-body">
        <h2 id={heading}>{w.question(whole(odd.last), whole(odd.now))}</h2>
        <p>
          {odd.most !== null && w.most(whole(odd.most))} {odd.around.length > 0 && w.around(odd.around.map(whole).join(', '))}
        </p>
        <p className="hint">{odd.side === 'low' ? w.oddLow : w.odd}</p>
        <div className="odd-answers">
          <button type="button" className="big" onClick={yes}>
            {w.yes(whole(odd.now))}
          </button>
          <button type="button" className="big" onClick={no}>
            {w.no}
          </button>
        </div>
        <button type="button" className="big plain" onClick={photo}>
          {w.photo}
        </button>
      </div>
    </dialog>
  );
}
