import type { ReactNode } from 'react';
import { mapWords } from '../../text/map.ts';

/** What each mark stands for. */
export function Key() {
  const w = mapWords.key;
  const marks: readonly (readonly [string, ReactNode])[] = [
    [
      w.rate,
      <g key="rate" className="station-mark">
        <circle className="rate-disc" cx={9} cy={14} r={5} />
        <circle className="rate-disc" cx={28} cy={14} r={11} />
      </g>,
    ],
    [
      w.unfit,
      <g key="unfit" className="station-mark hollow" transform="translate(20 14)">
        <circle className="rate-disc" r={8} />
        <path className="no-rate" d="M-4,-4L4,4M4,-4L-4,4" />
      </g>,
    ],
    [
      w.due,
      <g key="due" className="station-mark" transform="translate(20 14)">
        <circle className="due-ring" r={11.5} />
        <circle className="rate-disc" r={7} />
      </g>,
    ],
    [
      w.field,
      <g key="field" className="field-mark">
        <rect x={16} y={10} width={7} height={7} />
      </g>,
    ],
  ];
  return (
    <ul className="legend map-key" aria-label={w.title}>
      {marks.map(([label, mark]) => (
        <li key={label}>
          <svg width={42} height={28} aria-hidden="true" className="marks-key">
            {mark}
          </svg>
          {label}
        </li>
      ))}
      <li>{mapWords.local}</li>
    </ul>
  );
}
