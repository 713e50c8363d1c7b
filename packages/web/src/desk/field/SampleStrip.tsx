import { day, type FieldInsectView } from '@duskwatch/core';
import { words } from '../../text/index.ts';
import { Words } from '../../ui/chart/marks.tsx';
import { SampleMark } from './marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 30;

/** Scouting samples: infested of examined. */
export function SampleStrip({ insect, ...props }: StripProps & { insect: FieldInsectView }) {
  const { frame, today } = props;
  const marks = insect.samples.map((each) => ({ ...each, x: frame.x(day(each.sampledOn) + 0.5) }));
  const line = frame.x(today + 1);
  return (
    <Strip {...props} height={HEIGHT} className="samples">
      <text x={frame.left} y={10}>
        {words.field.samples}
      </text>
      {marks.map(({ sampledOn, kind, x }) => (
        <SampleMark key={`${sampledOn}|${kind}`} x={x} y={21} />
      ))}
      <Words
        plot={{ left: 0, top: 0, right: frame.width, bottom: HEIGHT + 4 }}
        // Clear of the marks and of the line of the day.
        taken={[
          ...marks.map(({ x }) => ({ left: x - 4, right: x + 4, top: 17, bottom: 25 })),
          { left: line - 1, right: line + 1, top: 0, bottom: HEIGHT },
        ]}
        words={marks.map(({ infested, examined, x }) => ({
          text: `${infested ?? '?'}/${examined}`,
          spots: [
            { x: x + 8, y: 25, anchor: 'start' },
            { x: x - 8, y: 25, anchor: 'end' },
            { x, y: 12, anchor: 'middle' },
          ],
        }))}
      />
    </Strip>
  );
}
