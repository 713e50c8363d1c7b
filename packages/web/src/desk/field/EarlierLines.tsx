import { day, type FieldInsectView } from '@duskwatch/core';
import type { ScaleLinear } from 'd3-scale';
import type { Frame } from '../../ui/chart/frame.ts';
import { stepPath, stepVertices } from '../../ui/chart/steps.ts';

/** What the traps of this field caught in earlier years, faint behind this season; each line bears its year at its end. */
export function EarlierLines(props: {
  seasons: FieldInsectView['earlierSeasons'];
  frame: Frame;
  y: ScaleLinear<number, number>;
}) {
  const { seasons, frame, y } = props;
  let lowest = Number.NEGATIVE_INFINITY;
  return (
    <g className="earlier">
      {seasons.map(({ year, design, points }, index) => {
        const shown = points.filter((point) => day(point.to) > frame.from && day(point.from) <= frame.to);
        const last = shown.findLast((point) => point.perNight !== null);
        // One under the other where they would cover each other.
        const level = last ? Math.max(y(last.perNight!) - 3, 10, lowest + 11) : 0;
        if (last) lowest = level;
        return (
          <g key={`${year}|${design}`} className={`earlier-${Math.min(index, 2)}`}>
            <path className="earlier-line" d={stepPath(stepVertices(shown), frame.x, y)} />
            {last && (
              <text x={Math.min(frame.x(day(last.to)), frame.right) - 3} y={level} textAnchor="end">
                {year}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
