/** Invented observations with a known truth, seeded. */
import type { Random } from '../statistics/random.testing.ts';
import type { InfestationPair } from './infestation-fit.ts';
import type { AgedLureCatch } from './lure-decay.ts';
import type { SideBySideCatch } from './side-by-side.ts';

/**
 * A flight of `perNight` moths on an average night, nights differing two- to threefold; two designs side by side at each
 * site. Traps differ from their twins by `trapLogSd` all season; with `ageing`, catch falls by so much a day of a lure's
 * age, each trap's lure changed every four weeks from a day of its own.
 */
export function inventedSideBySide(
  random: Random,
  truth: {
    readonly ratio: number;
    readonly k: number;
    readonly perNight: number;
    /** At each site. */
    readonly blocks: number;
    readonly sites?: number;
    readonly trapLogSd?: number;
    readonly ageing?: number;
    readonly season?: number;
  },
): SideBySideCatch[] {
  const { ratio, k, perNight, blocks, sites = 5, trapLogSd = 0, ageing = 0, season = 2025 } = truth;
  return Array.from({ length: sites }, (_, s) => {
    const traps = ['bucket', 'wire-cone'].map((treatment) => ({
      treatment,
      effect: trapLogSd * random.normal(),
      born: Math.floor(random.uniform() * LURE_LIFE),
    }));
    const rich = 0.5 * random.normal();
    return Array.from({ length: blocks }, (_, b) => {
      const night = Math.log(perNight) + rich + 0.7 * random.normal();
      const nights = 1 + Math.floor(random.uniform() * 4);
      return traps.map(({ treatment, effect, born }): SideBySideCatch => {
        const age = (born + 3.5 * b) % LURE_LIFE;
        const mean = nights * Math.exp(night + effect - ageing * age) * (treatment === 'bucket' ? 1 : ratio);
        const count = random.negativeBinomial(mean, k);
        return { treatment, block: `site ${s}, check ${b}, ${season}`, site: `site ${s}`, place: null, season, nights, count };
      });
    }).flat();
  }).flat();
}

/** Days. */
const LURE_LIFE = 28;

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

/**
 * Fields with a flight each, sampled once or several times: the share infested follows the catch `lag` days before, and
 * fields differ from one another by `fieldSd` of the log-odds in all that the catch does not tell.
 */
export function inventedInfestation(
  random: Random,
  truth: {
    readonly lag: number;
    readonly intercept: number;
    readonly slope: number;
    readonly pairs: number;
    readonly examined: number;
    readonly perField?: number;
    readonly fieldSd?: number;
  },
): InfestationPair[] {
  const { lag, intercept, slope, pairs, examined, perField = 1, fieldSd = 0.2 } = truth;
  return Array.from({ length: Math.ceil(pairs / perField) }, (_, f) => {
    const [peak, spread, height] = [-6 + 42 * random.uniform(), 5 + 4 * random.uniform(), 25 * random.uniform()];
    const own = fieldSd * random.normal();
    return Array.from({ length: perField }, (_, s): InfestationPair => {
      // Samples of one field are a week apart, about the first.
      const later = 7 * (s - Math.floor(perField / 2));
      const rateBefore = (days: number) => height * Math.exp(-(((days - peak - later) / spread) ** 2) / 2);
      const catches = Array.from({ length: 37 }, (_, before) => ({
        before,
        perNight: random.negativeBinomial(rateBefore(before), 3),
      }));
      const logOdds = intercept + slope * Math.log1p(rateBefore(lag)) + own;
      const share = 1 / (1 + Math.exp(-logOdds));
      const found = Array.from({ length: examined }, () => (random.uniform() < share ? 1 : 0)).reduce<number>(
        (sum, hit) => sum + hit,
        0,
      );
      return { field: `field ${f}`, examined, found, catches };
    });
  })
    .flat()
    .slice(0, pairs);
}
