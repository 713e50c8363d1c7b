import { graticuleStep } from '../../shared/places/projection.ts';
import type { GroundNow } from './ground.ts';

/** Lines of equal latitude and longitude in round degrees, where no base map says where this is. */
export function Graticule({ now }: { now: GroundNow }) {
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
