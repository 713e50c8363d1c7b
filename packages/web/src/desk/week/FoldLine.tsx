import { soonestCheck } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { words } from '../../text/index.ts';
import { thisWeekWords as w } from '../../text/this-week.ts';
import type { Fold } from './chunks.ts';

export type Unfold = (group: string) => void;

/** The fields of a group that need nothing, by name, with when they are looked at next. A click stands them among the others. */
export function FoldLine({ fold, unfold }: { fold: Fold; unfold: Unfold }) {
  const check = soonestCheck(fold.fields);
  const watched = fold.fields.some(({ cells }) => cells.some(({ advice }) => advice.verb === 'watch'));
  const said = check !== null ? w.quietWatch(dayText(check)) : watched ? w.quietWatchOnly : w.quietNone;
  return (
    <button type="button" className="fold-line" aria-expanded={fold.open} onClick={() => unfold(fold.group)}>
      {fold.open ? (
        w.fold
      ) : (
        <>
          <b>{fold.fields.map(({ name }) => name).join(', ')}</b>: {said}
          <span className="unseen"> ({words.week.shown(fold.fields.length, fold.fields.length)})</span>
        </>
      )}
    </button>
  );
}
