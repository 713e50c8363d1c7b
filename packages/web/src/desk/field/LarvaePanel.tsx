import type { LarvaeView, StageDays } from '@duskwatch/core';
import { daySpan, dayText, shortDay } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { spanOf } from '../../shared/flights/in-words.ts';
import { flightsWords } from '../../text/flights.ts';
import { localName } from '../../text/names.ts';
import { Cited } from '../../ui/Cited.tsx';
import { Folded } from '../../ui/Folded.tsx';

const w = flightsWords.larvae;

/** When it is worth going, and for each catch when its eggs hatch and its larvae are of each size. */
export function LarvaePanel({ larvae, of }: { larvae: LarvaeView; of: string }) {
  const { worthGoing, hatch, modelName, source, standing, twoSizes } = larvae;
  const columns = [
    { head: w.trap },
    { head: w.nights },
    { head: w.moths, number: true },
    { head: w.eggs },
    { head: twoSizes ? w.small : w.larvae },
    ...(twoSizes ? [{ head: w.large }] : []),
  ];
  const rows = larvae.rows.map(({ trapId, from, to, moths, eggs, smallLarvae, largeLarvae }) => [
    trapId,
    daySpan(from, to),
    countText(moths),
    daysText(eggs),
    daysText(smallLarvae),
    ...(twoSizes ? [daysText(largeLarvae)] : []),
  ]);
  const going =
    worthGoing &&
    (worthGoing.method === 'reached'
      ? w.goingNow
      : worthGoing.early === worthGoing.late
        ? w.going(dayText(worthGoing.middle))
        : w.goingWindow(dayText(worthGoing.middle), spanOf(worthGoing)));
  return (
    <div className="flights">
      <h3>{w.title}</h3>
      <p>
        {going} {hatch.half && w.half(dayText(hatch.half))}
      </p>
      <p className="basis">
        {w.height} {localName(modelName)}. {w.source}: <Cited source={source} standing={standing} />.
      </p>
      <Folded title={w.table} of={of} columns={columns} rows={rows} />
    </div>
  );
}

const daysText = (days: StageDays | null): string => {
  if (days === null) return '–';
  return days.to === null ? w.open(shortDay(days.from)) : daySpan(days.from, days.to);
};
