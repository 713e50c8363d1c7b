import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { placeOn, planOf } from '../../shared/places/projection.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';
import { Controls } from './Controls.tsx';
import { type GroundProps, roomBeside } from './ground.ts';

const MARGIN = 56;
const STEP = 60;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [STEP, 0],
  ArrowRight: [-STEP, 0],
  ArrowUp: [0, STEP],
  ArrowDown: [0, -STEP],
};

/** A plain plan, where the browser draws no map: dragged, or moved by arrows, plus and minus. */
export function PlanGround({ places, children, label }: GroundProps) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const [zoom, setZoom] = useState(1);
  const [shift, setShift] = useState<readonly [number, number]>([0, 0]);
  const from = useRef<readonly [number, number] | null>(null);
  const height = Math.round(Math.min(620, Math.max(360, width * 0.62)));
  const size = { width, height, margin: [roomBeside(width), MARGIN] as const };
  const plan = planOf(places, size, zoom, shift);
  const scaleBy = (factor: number) => {
    const next = Math.min(200, Math.max(1, zoom * factor));
    setZoom(next);
    setShift(([x, y]) => [(x * next) / zoom, (y * next) / zoom]);
  };
  const all = () => {
    setZoom(1);
    setShift([0, 0]);
  };
  const press = (event: KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (arrow) setShift(([x, y]) => [x + arrow[0], y + arrow[1]]);
    else if (event.key === '+' || event.key === '=') scaleBy(2);
    else if (event.key === '-') scaleBy(0.5);
    else return;
    event.preventDefault();
  };
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (from.current === null || event.buttons === 0) return;
    const [x, y] = from.current;
    from.current = [event.clientX, event.clientY];
    setShift(([left, top]) => [left + event.clientX - x, top + event.clientY - y]);
  };
  return (
    <div className="ground ground-plan">
      {/* biome-ignore-start lint/a11y/noNoninteractiveTabindex: what moves by dragging must move by keys too */}
      {/* biome-ignore-start lint/a11y/useSemanticElements: a fieldset is for forms */}
      <div
        ref={ref}
        role="group"
        aria-label={label}
        tabIndex={0}
        className="plan"
        style={{ height }}
        onKeyDown={press}
        onPointerDown={(event) => {
          from.current = [event.clientX, event.clientY];
        }}
        onPointerMove={drag}
        onPointerUp={() => {
          from.current = null;
        }}
      >
        {width > 0 &&
          children({
            width,
            height,
            plain: true,
            metresPerPixel: plan.metresPerPixel,
            project: plan.project,
            placeAt: (x, y) => placeOn(plan, x, y),
          })}
      </div>
      {/* biome-ignore-end lint/a11y/useSemanticElements: see above */}
      {/* biome-ignore-end lint/a11y/noNoninteractiveTabindex: see above */}
      <Controls nearer={() => scaleBy(2)} farther={() => scaleBy(0.5)} all={all} />
    </div>
  );
}
