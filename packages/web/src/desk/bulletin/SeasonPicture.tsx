import type { BulletinInsect } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { dayTextFrom } from '../../format/day.ts';
import { rateText } from '../../format/number.ts';

const [WIDTH, HEIGHT] = [320, 74];
const [TOP, FOOT] = [14, 16];
/** As the lines are drawn: this year, the last, the one before. */
const STROKES = ['━', '─', '┄'];

/** A season against the last two, small enough to stand beside its words; black on white as well. */
export function SeasonPicture({ insect, label }: { insect: BulletinInsect; label: string }) {
  const { season } = insect;
  const all = season.flatMap(({ points }) => points);
  if (all.length < 3) return null;
  const time = (on: string) => Date.parse(on);
  const days = all.map(({ on }) => time(on));
  const most = Math.max(...all.map(({ perNight }) => perNight));
  const x = scaleLinear([Math.min(...days), Math.max(...days)], [2, WIDTH - 2]);
  const y = scaleLinear([0, most || 1], [HEIGHT - FOOT, TOP]);
  const path = line<{ on: string; perNight: number }>()
    .x(({ on }) => x(time(on)))
    .y(({ perNight }) => y(perNight));
  const [now] = season;
  const sorted = all.map(({ on }) => on).sort();
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  return (
    <svg className="bulletin-season" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <line className="ground" x1={0} x2={WIDTH} y1={HEIGHT - FOOT} y2={HEIGHT - FOOT} />
      {season.slice(1).map(({ year, points }, before) => (
        <path key={year} className={before === 0 ? undefined : 'long-past'} d={path(points) ?? undefined} />
      ))}
      {now && <path className="now" d={path(now.points) ?? undefined} />}
      <text x={0} y={10}>
        {rateText(most)}
      </text>
      <text x={0} y={HEIGHT - 3}>
        {dayTextFrom(first, last)}
      </text>
      <text x={WIDTH / 2} y={HEIGHT - 3} textAnchor="middle">
        {season.map(({ year }, before) => `${STROKES[before]} ${year}`).join('  ')}
      </text>
      <text x={WIDTH} y={HEIGHT - 3} textAnchor="end">
        {dayTextFrom(last, last)}
      </text>
    </svg>
  );
}
