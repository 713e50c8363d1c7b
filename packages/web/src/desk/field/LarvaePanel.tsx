import type { LarvaeView, StageDays } from '@duskwatch/core';
import { daySpan, dayText, shortDay } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { spanOf } from '../../shared/flights/in-words.ts';
import { flightsWords } from '../../text/flights.ts';
import { localName } from '../../text/names.ts';
import { Cited } from '../../ui/Cited.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';

const w = flightsWords.larvae;

/** When it is worth going, and for each catch when its eggs hatch and its larvae are of each size. */
export function LarvaePanel({ larvae, of }: { larvae: LarvaeView; of: string }) {
  const { worthGoing, hatch, modelName, source, standing, twoSizes } = larvae;
  const stage = (head: string, days: (row: LarvaeView['rows'][number]) => StageDays | null) => ({
    head,
    value: (row: LarvaeView['rows'][number]) => days(row)?.from ?? null,
    cell: (row: LarvaeView['rows'][number]) => daysText(days(row)),
  });
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
      <FoldedTable
        title={w.table}
        of={of}
        rows={larvae.rows}
        keyOf={({ trapId, from }) => `${trapId}|${from}`}
        columns={[
          { head: w.trap, value: ({ trapId }) => trapId },
          { head: w.nights, value: ({ from }) => from, cell: ({ from, to }) => daySpan(from, to) },
          { head: w.moths, figure: [({ moths }) => moths, countText] },
          stage(w.eggs, ({ eggs }) => eggs),
          stage(twoSizes ? w.small : w.larvae, ({ smallLarvae }) => smallLarvae),
          ...(twoSizes ? [stage(w.large, ({ largeLarvae }) => largeLarvae)] : []),
        ]}
      />
    </div>
  );
}

const daysText = (days: StageDays | null): string => {
  if (days === null) return '–';
  return days.to === null ? w.open(shortDay(days.from)) : daySpan(days.from, days.to);
};
