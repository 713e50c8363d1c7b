import { describe, expect, it } from 'vitest';
import { randomFrom } from '../statistics/random.testing.ts';
import { ratioCoverage } from './coverage.testing.ts';
import { inventedSideBySide } from './invented.testing.ts';
import { compareSideBySide, type SideBySideCatch } from './side-by-side.ts';

const pair = { ratio: 2.5, k: 2, perNight: 4, blocks: 12, sites: 5 };
const reasonOf = (observations: readonly SideBySideCatch[]) => {
  const found = compareSideBySide(observations);
  return found.known ? null : found.reason;
};
const known = (observations: readonly SideBySideCatch[]) => {
  const found = compareSideBySide(observations);
  if (!found.known) throw new Error(found.reason);
  return found;
};

describe('the interval of 80 % about the ratio of two designs', () => {
  it.each([
    ['traps that differ in design alone', {}],
    ['traps that differ by a quarter from their twins', { trapLogSd: 0.25 }],
    ['such traps with lures that lose 3 % a day, each at an age of its own', { trapLogSd: 0.25, ageing: 0.03 }],
  ] as const)('holds the truth in 75 to 85 % with %s', (_, more) => {
    for (const sites of [4, 8]) {
      const { answered, held, bias } = ratioCoverage(200, { ...pair, sites, ...more });
      expect(answered).toBe(200);
      // 75 to 85 %, and twice the standard error of 200 seeds.
      expect(held).toBeGreaterThan(0.7);
      expect(held).toBeLessThan(0.9);
      expect(Math.abs(bias)).toBeLessThan(0.06);
    }
  });

  it('at one or two sites takes in what is assumed of two traps alike, and says so', () => {
    for (const sites of [1, 2]) {
      const { held } = ratioCoverage(200, { ...pair, sites, trapLogSd: 0.25, ageing: 0.03 });
      expect(held).toBeGreaterThan(0.7);
      expect(held).toBeLessThan(0.9);
      expect(known(inventedSideBySide(randomFrom(1), { ...pair, sites })).ratios).toMatchObject([{ sites, scatter: 'assumed' }]);
    }
    expect(known(inventedSideBySide(randomFrom(1), pair)).ratios).toMatchObject([{ sites: 5, scatter: 'seen' }]);
  });

  it('does not close in on a wrong ratio when one pair of traps is left standing for years', () => {
    const width = (blocks: number) => {
      const { ratio } = known(inventedSideBySide(randomFrom(5), { ...pair, sites: 1, blocks })).ratios[0]!;
      return Math.log(ratio.high / ratio.low);
    };
    expect(width(400)).toBeLessThan(width(12));
    expect(width(400)).toBeGreaterThan(0.8 * width(100));
  });
});

describe('two trap designs side by side', () => {
  it('are compared by their ratio in each night, so that a great flight seen by one alone does not count', () => {
    const observations = inventedSideBySide(randomFrom(3), pair);
    const lonely = {
      treatment: 'bucket',
      block: 'the great night',
      site: 'site 0',
      place: null,
      season: 2025,
      count: 900,
      nights: 1,
    };
    const [without, withIt] = [known(observations), known([...observations, lonely])];
    expect(withIt.ratios[0]!.ratio.value).toBeCloseTo(without.ratios[0]!.ratio.value, 9);
    expect(withIt.leftOut).toEqual({ alone: 1, empty: without.leftOut.empty });
  });

  it('are always said in one direction: against the wire cone, which published ratios are held against', () => {
    const observations = inventedSideBySide(randomFrom(4), pair).toSorted((a, b) => a.treatment.localeCompare(b.treatment));
    for (const rows of [observations, observations.toReversed()])
      expect(known(rows).ratios).toMatchObject([{ treatment: 'bucket', against: 'wire-cone' }]);
    const lures = observations.map((row) => ({ ...row, treatment: row.treatment === 'bucket' ? '28-day lure' : '100-day lure' }));
    expect(known(lures).ratios).toMatchObject([{ treatment: '100-day lure', against: '28-day lure' }]);
  });

  it('that change posts at one site count as two arrangements, so that a good post cancels', () => {
    const good = inventedSideBySide(randomFrom(8), { ...pair, sites: 1, blocks: 60, ratio: 1, k: 20 }).map((row, i) => {
      const swapped = Math.floor(i / 2) % 2 === 0;
      const place = (row.treatment === 'bucket') === swapped ? 'post 0' : 'post 1';
      return { ...row, place, count: row.count * (place === 'post 0' ? 4 : 1) };
    });
    const { ratio, sites } = known(good).ratios[0]!;
    expect(sites).toBe(2);
    expect(Math.abs(Math.log(ratio.value))).toBeLessThan(0.2);
  });

  it('say how many sites a useful ratio takes: more where sites differ more', () => {
    const sitesFor = (trapLogSd: number) =>
      known(inventedSideBySide(randomFrom(2), { ...pair, sites: 10, trapLogSd })).ratios[0]!.sitesForUsefulRatio;
    expect(sitesFor(0)).toBeLessThanOrEqual(10);
    expect(sitesFor(0.7)).toBeGreaterThan(sitesFor(0));
  });

  it('keep a finite ratio where one of them caught nothing at one site', () => {
    const silent = inventedSideBySide(randomFrom(6), pair).map((row) =>
      row.site === 'site 1' && row.treatment === 'bucket' ? { ...row, count: 0 } : row,
    );
    const { ratio } = known(silent).ratios[0]!;
    for (const value of [ratio.value, ratio.low, ratio.high]) expect(Number.isFinite(value)).toBe(true);
  });
});

describe('two designs that stood together for years', () => {
  const years = (seed: number, ratioIn: (year: number) => number, count = 15) => {
    const random = randomFrom(seed);
    return Array.from({ length: count }, (_, i) => 1994 + i).flatMap((season) =>
      inventedSideBySide(random, { ...pair, sites: 3, ratio: ratioIn(season), season }),
    );
  };

  it('show each season, and a ratio that went from 2 to above 10 in fifteen years', () => {
    const { seasons, trend } = known(years(1, (year) => 2 * 1.13 ** (year - 1994))).ratios[0]!;
    expect(seasons.map(({ season }) => season)).toEqual(Array.from({ length: 15 }, (_, i) => 1994 + i));
    expect(trend!.clear).toBe(true);
    // Buckets are held against wire cones: the wire cone gains, so the ratio falls.
    expect(1 / trend!.first.ratio).toBeGreaterThan(1.6);
    expect(1 / trend!.first.ratio).toBeLessThan(2.5);
    expect(1 / trend!.last.ratio).toBeGreaterThan(8);
    expect(1 / trend!.perYear.high).toBeLessThan(1.13);
    expect(1 / trend!.perYear.low).toBeGreaterThan(1.13);
  });

  it('show no trend where there is none, in about eight of ten programs', () => {
    const clear = Array.from({ length: 50 }, (_, i) => known(years(i + 1, () => 2.5, 6)).ratios[0]!.trend!.clear);
    const share = clear.filter(Boolean).length / clear.length;
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.35);
  });

  it('need four seasons for a trend, and one season is no list', () => {
    expect(known(years(1, () => 2.5, 3)).ratios[0]).toMatchObject({ trend: null, seasons: [{}, {}, {}] });
    expect(known(years(1, () => 2.5, 1)).ratios[0]).toMatchObject({ trend: null, seasons: [] });
  });
});

describe('three designs, each beside another now and then', () => {
  it('are compared only where they stood together', () => {
    const random = randomFrom(12);
    const together = (first: string, second: string, times: number, ratio: number, from: number) =>
      Array.from({ length: times }, (_, i) => i + from).flatMap((night) =>
        [first, second].map(
          (treatment, j): SideBySideCatch => ({
            treatment,
            block: `night ${night}`,
            site: 'gate',
            place: null,
            season: 2025,
            nights: 1,
            count: random.negativeBinomial(8 * (j ? ratio : 1), 20),
          }),
        ),
      );
    const found = known([
      ...together('bucket', 'mesh-cone', 12, 2, 0),
      ...together('mesh-cone', 'wire-cone', 12, 2, 12),
      ...together('delta', 'wire-cone', 2, 2, 24),
    ]);
    expect(found.ratios.map(({ against, treatment }) => [against, treatment])).toEqual([
      ['wire-cone', 'mesh-cone'],
      ['mesh-cone', 'bucket'],
    ]);
    for (const { ratio } of found.ratios) expect(Math.abs(Math.log(ratio.value / 0.5))).toBeLessThan(0.35);
  });
});

describe('a comparison is refused', () => {
  it('with what is needed, when pairs or moths are too few', () => {
    const found = compareSideBySide(inventedSideBySide(randomFrom(1), { ...pair, sites: 1, blocks: 4 }));
    expect(found).toMatchObject({ known: false, reason: 'too-few-shared-nights' });
    if (!found.known) expect(found.problem.fix).toMatch(/\d+ more checks/);
    const silent = inventedSideBySide(randomFrom(1), pair).map((row) =>
      row.treatment === 'bucket' ? { ...row, count: 0 } : row,
    );
    expect(reasonOf(silent)).toBe('too-few-moths');
  });

  it('when there is one design, or nothing at all', () => {
    expect(reasonOf(inventedSideBySide(randomFrom(1), pair).filter(({ treatment }) => treatment === 'bucket'))).toBe(
      'one-treatment',
    );
    expect(reasonOf([])).toBe('one-treatment');
  });
});
