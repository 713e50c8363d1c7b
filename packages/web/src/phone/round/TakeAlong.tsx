import type { RoundStop, RoundTrap } from '@duskwatch/core';
import { driveWords } from '../../text/drive.ts';
import { shortName } from '../shared/figures.ts';
import { takeAlong } from '../shared/take-along.ts';

/** Before the drive: what to take, each line with the stops that need it. */
export function TakeAlong({
  stops,
  asked,
}: {
  readonly stops: readonly RoundStop[];
  readonly asked: (trap: RoundTrap) => boolean;
}) {
  const w = driveWords.take;
  const { lures, lureStops, unfitStops, liveStops } = takeAlong(stops, asked);
  const number = lures.reduce((sum, { count }) => sum + count, 0);
  const forStops = (numbers: readonly number[]) => w.stops(numbers.join(', '), numbers.length);
  const lines: (readonly [string, string])[] = [];
  if (number > 0) {
    lines.push([w.lures(lures.map(({ name, count }) => w.lure(count, shortName(name))).join(', ')), forStops(lureStops)]);
    lines.push([w.gloves(number), w.glovesHelp]);
  }
  if (unfitStops.length > 0) lines.push([w.repair, w.repairHelp(unfitStops.join(', '), unfitStops.length)]);
  if (liveStops.length > 0) lines.push([w.cold, forStops(liveStops)]);
  if (lines.length === 0) return null;
  return (
    <section className="take" aria-labelledby="take">
      <h2 id="take">{w.title}</h2>
      {lines.map(([what, why]) => (
        <label key={what}>
          <input type="checkbox" />
          <span>
            {what} <small>{why}</small>
          </span>
        </label>
      ))}
    </section>
  );
}
