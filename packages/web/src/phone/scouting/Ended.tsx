import { planWords, walkWords as w } from '../../text/walk.ts';
import { progressOf, type Walk } from '../shared/walk.ts';
import { shareText } from './share.ts';

/** The end of a walk: the answer, what it means, what to record and whom to tell. It names a decision, never a treatment. */
export function Ended({ walk, farm }: { readonly walk: Walk; readonly farm: string }) {
  const { at, share } = progressOf(walk);
  const { judgement } = at;
  const tell = {
    above: w.after.tellAbove(farm),
    below: w.after.tellBelow,
    'undecided-at-limit': w.after.tellClose(farm),
    'go-on': '',
  };
  return (
    <>
      {walk.plan && (
        <>
          <Mark judgement={judgement} />
          <p className="scout-answer">{planWords.answer[judgement]}</p>
          <p>{planWords.meaning(judgement, walk.plan)}</p>
          <p>{planWords.next(judgement)}</p>
        </>
      )}
      {share && <p className="scout-answer">{shareText(share)}</p>}
      <dl className="scout-after">
        <dt>{w.after.tell}</dt>
        <dd>{walk.plan ? tell[judgement] : w.after.tellCount(farm)}</dd>
        <dt>{w.after.record}</dt>
        <dd>
          {w.after.recordSample} {walk.stage === null && w.after.recordStage}{' '}
          {judgement === 'above' && walk.plan && w.after.recordDecision}
        </dd>
      </dl>
    </>
  );
}

/** Below the line, above it, or on it: told by shape as well as by the ground. */
function Mark({ judgement }: { readonly judgement: string }) {
  const arrow = { below: 'M4 88H116M60 6V62M36 40L60 64 84 40', above: 'M4 8H116M60 90V34M36 56L60 32 84 56' }[judgement];
  return (
    <svg className="scout-mark" viewBox="0 0 120 96" aria-hidden="true">
      <path d={arrow ?? 'M4 40H116M4 56H116'} />
    </svg>
  );
}
