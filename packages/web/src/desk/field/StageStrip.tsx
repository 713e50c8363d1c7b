import { day, type FieldView } from '@duskwatch/core';
import { stageName } from '../../text/names.ts';
import { fits } from '../../ui/chart/marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 22;

/** Crop stages from the day each was first seen; before the first, nothing is claimed. */
export function StageStrip({ view, ...props }: StripProps & { view: FieldView }) {
  const { frame, today } = props;
  const seen = [...view.stages]
    .sort((a, b) => a.observedOn.localeCompare(b.observedOn))
    .filter((each, index, all) => each.stage !== all[index - 1]?.stage);
  return (
    <Strip {...props} height={HEIGHT} className="stages">
      {seen.map((each, index) => {
        const next = seen[index + 1];
        const from = frame.x(Math.max(frame.from, day(each.observedOn)));
        const to = frame.x(next ? day(next.observedOn) : Math.min(today + 1, frame.to + 1));
        const name = stageName(view.field.crop, each.stage);
        return (
          <g key={each.observedOn}>
            <rect
              className={index % 2 ? 'stage odd' : 'stage'}
              x={from}
              y={3}
              width={Math.max(1, to - from)}
              height={HEIGHT - 6}
            />
            {fits(name, from, to) && (
              <text x={from + 5} y={15}>
                {name}
              </text>
            )}
          </g>
        );
      })}
    </Strip>
  );
}
