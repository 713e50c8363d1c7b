/** Invented observations with a known truth, seeded. */
import type { Random } from '../statistics/random.testing.ts';
import type { InfestationPair } from './infestation-fit.ts';
import type { AgedLureCatch } from './lure-decay.ts';
import type { SideBySideCatch } from './side-by-side.ts';

/** A flight of `perNight` moths on an average night, nights differing two- to threefold; two designs side by side. */
export function inventedSideBySide(
  random: Random,
  truth: {
    readonly ratio: number;
    readonly k: number;
    readonly perNight: number;
    readonly blocks: number;
    readonly traps?: number;
    readonly places?: 'rotated' | 'fixed' | 'unknown';
  },
): SideBySideCatch[] {
  const { ratio, k, perNight, blocks, traps = 1, places = 'rotated' } = truth;
  const posts = Array.from({ length: 2 * traps }, () => (places === 'unknown' ? 0 : 0.3 * random.normal()));
  return Array.from({ length: blocks }, (_, b) => {
    const night = Math.log(perNight) + 0.7 * random.normal();
    const nights = 1 + Math.floor(random.uniform() * 4);
    return posts.map((post, i): SideBySideCatch => {
      const bucket = (places === 'rotated' ? i + b : i) % 2 === 0;
      const mean = nights * Math.exp(night + post) * (bucket ? 1 : ratio);
      const place = places === 'unknown' ? null : `post ${i}`;
      return {
        treatment: bucket ? 'bucket' : 'wire-cone',
        block: `check ${b}`,
        place,
        nights,
        count: random.negativeBinomial(mean, k),
      };
    });
  }).flat();
}

/** Traps checked every three nights; lures changed every `life` days, each trap's first change at its own day. */
export function inventedLures(
  random: Random,
  truth: {
    readonly perDay: number;
    readonly k: number;
    readonly perNight: number;
    readonly traps: number;
    readonly checks: number;
    readonly change: 'staggered' | 'together' | 'never';
  },
): AgedLureCatch[] {
  const { perDay, k, perNight, traps, checks, change } = truth;
  const life = 24;
  const sites = Array.from({ length: traps }, (_, t) => ({
    effect: 0.5 * random.normal(),
    born: change === 'together' ? 0 : Math.round((t * life) / traps),
  }));
  return Array.from({ length: checks }, (_, c) => {
    const flight = Math.log(perNight) + 0.6 * random.normal();
    return sites.map(({ effect, born }, t): AgedLureCatch => {
      const since = 3 * c + 1.5 + born;
      const lureAgeDays = change === 'never' ? since : since % life;
      const mean = 3 * Math.exp(flight + effect + perDay * lureAgeDays);
      return { trap: `trap ${t}`, block: `check ${c}`, lureAgeDays, nights: 3, count: random.negativeBinomial(mean, k) };
    });
  }).flat();
}

/** Fields with a flight each, sampled once: the share infested follows the catch `lag` days before. */
export function inventedInfestation(
  random: Random,
  truth: {
    readonly lag: number;
    readonly intercept: number;
    readonly slope: number;
    readonly pairs: number;
    readonly examined: number;
  },
): InfestationPair[] {
  const { lag, intercept, slope, pairs, examined } = truth;
  return Array.from({ length: pairs }, () => {
    const [peak, spread, height] = [-6 + 42 * random.uniform(), 5 + 4 * random.uniform(), 25 * random.uniform()];
    const rateBefore = (days: number) => height * Math.exp(-(((days - peak) / spread) ** 2) / 2);
    const catches = Array.from({ length: 37 }, (_, before) => ({
      before,
      perNight: random.negativeBinomial(rateBefore(before), 3),
    }));
    const logOdds = intercept + slope * Math.log1p(rateBefore(lag)) + 0.2 * random.normal();
    const share = 1 / (1 + Math.exp(-logOdds));
    const found = Array.from({ length: examined }, () => (random.uniform() < share ? 1 : 0)).reduce<number>(
      (sum, hit) => sum + hit,
      0,
    );
    return { examined, found, catches };
  });
}
