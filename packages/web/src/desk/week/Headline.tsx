import { type WeekView, weekSummary } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { thisWeekWords } from '../../text/this-week.ts';

/** The week in a sentence: what is late and what is due, then how much there is behind it. */
export function Headline({ view, folds }: { view: WeekView; folds: boolean }) {
  const w = thisWeekWords.headline;
  const { lateDecisions, moreDecisions, moreBy, scouting, blind, fields, farms, quiet } = weekSummary(view);
  const by = moreBy && dayText(moreBy);
  const parts = [
    ...(lateDecisions > 0 ? [w.late(lateDecisions)] : []),
    ...(moreDecisions > 0 && by ? [(lateDecisions > 0 ? w.moreAfterLate : w.due)(moreDecisions, by)] : []),
    ...(lateDecisions + moreDecisions === 0 ? [w.noDecision] : []),
    ...(scouting > 0 ? [w.scouting(scouting)] : []),
    ...(blind > 0 ? [w.blind(blind)] : []),
  ];
  return (
    <p className="week-headline">
      {parts.join('; ')}.{' '}
      <span className="faint">
        {w.fields(fields, farms)}
        {folds && quiet > 0 && `; ${w.quiet(quiet)}`}.
      </span>
    </p>
  );
}
