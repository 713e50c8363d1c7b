import { ASSUMPTIONS } from '@duskwatch/core';
import { type ReactNode, useId } from 'react';
import { percentText } from '../../format/number.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { flightsWords } from '../../text/flights.ts';
import { words } from '../../text/index.ts';
import { Folded } from '../../ui/Folded.tsx';
import { CheckMark, Hatch, LureMark, SampleMark } from './marks.tsx';

/** What each mark of the charts stands for. */
export function Legend() {
  const w = words.field.legend;
  const hatch = useId();
  const marks: readonly (readonly [string, ReactNode])[] = [
    [
      w.rate(percentText(ASSUMPTIONS.intervalLevel.value)),
      <g key="rate">
        <rect className="rate-band" x={0} y={3} width={26} height={10} />
        <line className="rate-line" x1={0} x2={26} y1={8} y2={8} />
      </g>,
    ],
    [
      flightsWords.legend,
      <g key="flight" className="flight-curves">
        <path className="flight-curve" d="M0,14C8,14 9,3 14,3" />
        <path className="flight-curve ahead" d="M14,3C19,3 19,14 27,14" />
      </g>,
    ],
    [fieldPageWords.legend.open, <path key="open" className="open-end" d="M13,15V3m-4,5l4,-5l4,5" />],
    [fieldPageWords.legend.weak, <rect key="weak" className="rate-band weak" x={0} y={3} width={26} height={10} />],
    [w.earlier, <line key="earlier" className="earlier-line" x1={0} x2={26} y1={8} y2={8} />],
    [w.threshold, <line key="threshold" className="threshold" x1={0} x2={26} y1={8} y2={8} />],
    [w.fit, <CheckMark key="fit" condition="fit" x={13} y={8} />],
    [w.doubtful, <CheckMark key="doubtful" condition="doubtful" x={13} y={8} />],
    [w.unfit, <CheckMark key="unfit" condition="unfit" x={13} y={8} />],
    [
      w.lure,
      <g key="lure">
        <line className="lure-life" x1={4} x2={26} y1={8} y2={8} />
        <LureMark x={4} y={8} />
      </g>,
    ],
    [w.pastLure, <line key="past" className="lure-past" x1={0} x2={26} y1={8} y2={8} />],
    [
      w.treatment,
      <g key="treatment">
        <Hatch id={hatch} />
        <rect fill={`url(#${hatch})`} x={1} y={2} width={25} height={13} />
      </g>,
    ],
    [
      fieldPageWords.legend.notTreated,
      <g key="not-treated" className="decisions">
        <path className="not-treated" d="M13,2l6,6l-6,6l-6,-6Z" />
      </g>,
    ],
    [
      fieldPageWords.legend.again,
      <g key="again" className="decisions">
        <line className="late-span" x1={0} x2={14} y1={8} y2={8} />
        <line className="rule again" x1={22} x2={22} y1={1} y2={15} />
      </g>,
    ],
    [w.sample, <SampleMark key="sample" x={13} y={8} />],
    [
      w.expected,
      <g key="expected" className="event expected">
        <line x1={1} x2={25} y1={8} y2={8} />
        <circle cx={13} cy={8} r={3.2} />
      </g>,
    ],
    [
      w.reached,
      <g key="reached" className="event reached">
        <circle cx={13} cy={8} r={3.2} />
      </g>,
    ],
    [w.today, <line key="today" className="today" x1={13} x2={13} y1={0} y2={16} />],
  ];
  const list = (
    <ul className="legend" aria-label={w.title}>
      {marks.map(([label, mark]) => (
        <li key={label}>
          <svg className="strip" width={28} height={16} aria-hidden="true">
            {mark}
          </svg>
          {label}
        </li>
      ))}
    </ul>
  );
  return <Folded title={fieldPageWords.howToRead}>{list}</Folded>;
}
