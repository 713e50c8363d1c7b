import type { Condition } from '@duskwatch/core';

/** A check on the axis: the condition is told by the shape, so that it needs no colour. */
export function CheckMark({ condition, x, y }: { condition: Condition; x: number; y: number }) {
  if (condition === 'fit') return <line className="check fit" x1={x} x2={x} y1={y - 6} y2={y + 5} />;
  if (condition === 'doubtful')
    return <path className="check doubtful" d={`M${x - 4.5},${y + 4}L${x},${y - 5}L${x + 4.5},${y + 4}Z`} />;
  return <path className="check unfit" d={`M${x - 4},${y - 4}L${x + 4},${y + 4}M${x + 4},${y - 4}L${x - 4},${y + 4}`} />;
}

export const LureMark = ({ x, y }: { x: number; y: number }) => (
  <path className="lure" d={`M${x},${y - 4}L${x + 4},${y}L${x},${y + 4}L${x - 4},${y}Z`} />
);

export const SampleMark = ({ x, y }: { x: number; y: number }) => (
  <rect className="sample" x={x - 4} y={y - 4} width={8} height={8} />
);

/** The shading of a protected span; drawn with `fill="url(#id)"`. */
export const Hatch = ({ id }: { id: string }) => (
  <defs>
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line className="hatch" x1="0" x2="0" y1="0" y2="6" />
    </pattern>
  </defs>
);
