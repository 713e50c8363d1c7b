import type { PlannedRound, RoundScout, StationToVisit } from '@duskwatch/core';
import { type Place, planOf } from '../../shared/places/projection.ts';
import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';

const SIZE = { width: 420, height: 260, margin: 26 };

/** The stops in order, joined by straight lines; the table beside it says the same in words. */
export function Drawing(props: { round: PlannedRound; stations: ReadonlyMap<string, StationToVisit>; home: RoundScout['home'] }) {
  const { round, stations, home } = props;
  const stops = round.stops.flatMap(({ station }, index) => {
    const at = placeOf(stations.get(station));
    return at ? [{ at, index, station }] : [];
  });
  if (stops.length === 0) return null;
  const plan = planOf([...stops.map(({ at }) => at), ...(home ? [home] : [])], SIZE);
  const start = home ? plan.project(home) : null;
  const points = stops.map((stop) => ({ ...stop, point: plan.project(stop.at) }));
  const way = [...(start ? [start] : []), ...points.map(({ point }) => point), ...(start ? [start] : [])];
  return (
    <svg className="round-drawing" viewBox={`0 0 ${SIZE.width} ${SIZE.height}`} role="img" aria-label={w.map(round.scout)}>
      <polyline points={way.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')} />
      {start && <rect x={start[0] - 6} y={start[1] - 6} width={12} height={12} />}
      {points.map(({ point: [x, y], index, station }) => (
        <g key={station} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
          <circle r={10} />
          <text dy="0.35em">{index + 1}</text>
        </g>
      ))}
    </svg>
  );
}

const placeOf = (station: StationToVisit | undefined): Place | null =>
  station && station.latitude !== null && station.longitude !== null
    ? { latitude: station.latitude, longitude: station.longitude }
    : null;
