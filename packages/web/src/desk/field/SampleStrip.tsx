import { day, type FieldInsectView } from '@duskwatch/core';
import { words } from '../../text/index.ts';
import { SampleMark } from './marks.tsx';
import { Strip, type StripProps } from './Strip.tsx';

const HEIGHT = 30;

/** Scouting samples: infested of examined. */
export function SampleStrip({ insect, ...props }: StripProps & { insect: FieldInsectView }) {
  const { frame, today } = props;
  return (
    <Strip {...props} height={HEIGHT} className="samples">
      <text x={frame.left} y={10}>
        {words.field.samples}
      </text>
      {insect.samples.map((each) => {
        const x = frame.x(day(each.sampledOn) + 0.5);
        // Clear of the edge and of the line that marks the day.
        const turned = x > frame.right - 60 || (x <= frame.x(today + 1) && x > frame.x(today + 1) - 50);
        return (
          <g key={`${each.sampledOn}|${each.kind}`}>
            <SampleMark x={x} y={21} />
            <text x={x + (turned ? -8 : 8)} y={25} textAnchor={turned ? 'end' : 'start'} className="sample-word">
              {each.infested ?? '?'}/{each.examined}
            </text>
          </g>
        );
      })}
    </Strip>
  );
}
