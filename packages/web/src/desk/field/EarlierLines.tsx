import { day, type FieldInsectView } from '@duskwatch/core';
import { rateText } from '../../format/number.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import type { Frame } from '../../ui/chart/frame.ts';
import { type EndWord, Line } from '../../ui/chart/marks.tsx';
import { stepPath, stepVertices } from '../../ui/chart/steps.ts';

interface Props {
  readonly seasons: FieldInsectView['earlierSeasons'];
  readonly frame: Frame;
  readonly y: (value: number) => number;
}

const shownOf = (points: Props['seasons'][number]['points'], { from, to }: Frame) =>
  points.filter((point) => day(point.to) > from && day(point.from) <= to);

/** What the traps of this field caught in earlier years, faint behind this season. */
export function EarlierLines({ seasons, frame, y }: Props) {
  return seasons.map(({ year, design, points }, index) => (
    <g key={`${year}|${design}`} className={`earlier-${Math.min(index, 2)}`}>
      <Line className="earlier-line" d={stepPath(stepVertices(shownOf(points, frame)), frame.x, y)} />
    </g>
  ));
}

/** Each line's year where it leaves the chart. */
export const earlierEnds = ({ seasons, frame, y }: Props): EndWord[] =>
  seasons.flatMap(({ year, points }) => {
    const last = shownOf(points, frame).findLast((point) => point.perNight !== null);
    if (!last) return [];
    const text = fieldPageWords.chart.earlierAt(String(year), rateText(last.perNight!));
    return [{ text, y: y(last.perNight!), className: 'earlier-word' }];
  });
