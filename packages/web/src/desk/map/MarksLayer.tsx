/** What stands on the ground: fields, stations sized by rate, rings where something is due. */
import type { FieldRecord } from '@duskwatch/core';
import { useLengthUnit } from '../../browser/preferences.ts';
import { graticuleStep } from '../../shared/places/projection.ts';
import { mapWords as w } from '../../text/map.ts';
import type { GroundNow } from './ground.ts';
import { radiusOf, type StationMark } from './marks.ts';
import { scaleBarIn } from './scale-bar.ts';

/** Nearer than this, names have room. */
const NAMES_BELOW_M = 14;
const FEW = 14;

export interface MarksLayerProps {
  readonly now: GroundNow;
  readonly marks: readonly StationMark[];
  readonly highest: number;
  readonly fields: readonly FieldRecord[];
  readonly chosen: string | null;
  readonly choose: (key: string) => void;
  readonly label: string;
}

export function MarksLayer({ now, marks, highest, fields, chosen, choose, label }: MarksLayerProps) {
  const { width, height, project, metresPerPixel } = now;
  const inSight = ([x, y]: readonly [number, number]) => x > -60 && x < width + 60 && y > -60 && y < height + 60;
  const near = metresPerPixel < NAMES_BELOW_M;
  const drawn = marks
    .map((mark) => ({ mark, at: project(mark), radius: radiusOf(mark.perNight, highest) }))
    .filter(({ at }) => inSight(at))
    // Large ones below, so that none hides a small one.
    .sort((a, b) => b.radius - a.radius);
  const named = near || drawn.length <= FEW;
  const [unit] = useLengthUnit();
  const bar = scaleBarIn(unit, metresPerPixel, Math.min(140, width / 4));
  return (
    <svg className="marks" width={width} height={height} role="img" aria-label={label}>
      {now.plain && <Graticule now={now} />}
      {fields.map((field) => {
        if (field.latitude === null || field.longitude === null) return null;
        const at = project({ latitude: field.latitude, longitude: field.longitude });
        if (!inSight(at)) return null;
        return (
          <g key={field.fieldId} className="field-mark" transform={`translate(${at[0]} ${at[1]})`}>
            <rect x={-3.5} y={-3.5} width={7} height={7} />
            {near && (
              <text x={7} y={4}>
                {field.name}
              </text>
            )}
          </g>
        );
      })}
      {drawn.map(({ mark, at, radius }) => (
        // Pointers only: the table below holds the same stations for keys and readers.
        // biome-ignore lint/a11y/noStaticElementInteractions: see the line above
        <g
          key={mark.key}
          className={`station-mark${mark.perNight === null ? ' hollow' : ''}${mark.key === chosen ? ' chosen' : ''}`}
          transform={`translate(${at[0]} ${at[1]})`}
          onClick={() => choose(mark.key)}
        >
          <circle className="reach" r={Math.max(radius + 6, 14)} />
          {mark.due && <circle className="due-ring" r={radius + 4.5} />}
          <circle className="rate-disc" r={radius} />
          {mark.perNight === null && <path className="no-rate" d="M-4,-4L4,4M4,-4L-4,4" />}
          {(named || mark.key === chosen) && (
            <text x={radius + 7} y={-6}>
              {mark.station}
            </text>
          )}
        </g>
      ))}
      <g className="scale-bar" transform={`translate(${width - bar.pixels - 16} ${height - 14})`}>
        <path d={`M0,-5V0H${bar.pixels}V-5`} />
        <text x={bar.pixels / 2} y={-5} textAnchor="middle">
          {bar.text}
        </text>
      </g>
      <g className="north" transform="translate(68 34)">
        <path d="M0,12V-10M-4,-4L0,-11L4,-4" />
        <text y={-15} textAnchor="middle">
          {w.north}
        </text>
      </g>
    </svg>
  );
}

/** Lines of equal latitude and longitude in round degrees, where no base map says where this is. */
function Graticule({ now }: { now: GroundNow }) {
  const { width, height, project, placeAt } = now;
  const [topLeft, bottomRight] = [placeAt(0, 0), placeAt(width, height)];
  const step = graticuleStep(Math.max(bottomRight.longitude - topLeft.longitude, 1e-6));
  const lines = (from: number, to: number) => {
    const first = Math.ceil(from / step);
    return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, index) => (first + index) * step);
  };
  const digits = Math.max(0, Math.ceil(-Math.log10(step)));
  return (
    <g className="graticule">
      {lines(topLeft.longitude, bottomRight.longitude).map((longitude) => {
        const [x] = project({ latitude: topLeft.latitude, longitude });
        return (
          <g key={longitude}>
            <line x1={x} x2={x} y1={0} y2={height} />
            <text x={x + 3} y={height - 4}>
              {longitude.toFixed(digits)}°
            </text>
          </g>
        );
      })}
      {lines(bottomRight.latitude, topLeft.latitude).map((latitude) => {
        const [, y] = project({ latitude, longitude: topLeft.longitude });
        return (
          <g key={latitude}>
            <line x1={0} x2={width} y1={y} y2={y} />
            <text x={4} y={y - 3}>
              {latitude.toFixed(digits)}°
            </text>
          </g>
        );
      })}
    </g>
  );
}
