import type { ReactNode } from 'react';
import { useWidth } from './useWidth.ts';

/** What is drawn into: the window's part within the axes, in CSS pixels. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room that axes and words need around it. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

export const plotIn = (width: number, height: number, { left, right, top, foot }: Margins): Plot => ({
  left,
  right: Math.max(left + 1, width - right),
  top,
  bottom: height - foot,
});

/**
 * A drawing as wide as its place, drawn at true size so that words and lines keep theirs. The numbers stand in a table
 * beside it, so it is hidden from readers.
 */
export function Chart(props: { height: number; className?: string; children: (width: number) => ReactNode }) {
  const { height, className, children } = props;
  const [ref, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={ref} className={className ? `plot ${className}` : 'plot'} style={{ minHeight: height }}>
      {width > 0 && (
        <svg className="chart" width={width} height={height} aria-hidden="true">
          {children(width)}
        </svg>
      )}
    </div>
  );
}
