import { day, type FieldInsectView } from '@duskwatch/core';
import type { ScaleLinear } from 'd3-scale';
import type { Frame } from '../draw/frame.ts';
import { stepPath, stepVertices } from '../draw/steps.ts';

/** What the traps of this field caught in earlier years, faint behind this season; each line bears its year at its peak. */
export function EarlierLines(props: {
  seasons: FieldInsectView['earlierSeasons'];
  frame: Frame;
  y: ScaleLinear<number, number>;
}) {
  const { seasons, frame, y } = props;
  return (
    <g className="earlier">
      {seasons.map(({ year, design, points }, index) => {
        const shown = points.filter((point) => day(point.to) > frame.from && day(point.from) <= frame.to);
        const peak = shown.reduce<(typeof shown)[number] | null>(
          (best, point) => ((point.perNight ?? -1) > (best?.perNight ?? 0) ? point : best),
          null,
        );
        return (
          <g key={`${year}|${design}`} className={`earlier-${Math.min(index, 2)}`}>
            <path className="earlier-line" d={stepPath(stepVertices(shown), frame.x, y)} />
            {peak && (
              <text x={Math.min(frame.x(day(peak.from)) + 3, frame.right - 30)} y={Math.max(y(peak.perNight!) - 3, 10)}>
                {year}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
