import { describe, expect, it } from 'vitest';
import { randomFrom } from '../statistics/random.testing.ts';
import { ratioCoverage } from './coverage.testing.ts';
import { inventedSideBySide } from './invented.testing.ts';
import { compareSideBySide, type SideBySideCatch } from './side-by-side.ts';

const pair = { ratio: 2.5, k: 1.5, perNight: 4, blocks: 20 };
const reasonOf = (observations: readonly SideBySideCatch[]) => {
  const found = compareSideBySide(observations);
  return found.known ? null : found.reason;
};

describe('two trap designs side by side', () => {
  it('show the ratio that they were simulated with about eight times in ten, without bias', () => {
    const { answered, held, bias } = ratioCoverage(150, { ...pair, blocks: 10, places: 'unknown' });
    expect(answered).toBe(150);
    expect(held).toBeGreaterThan(0.7);
    expect(held).toBeLessThan(0.9);
    expect(Math.abs(bias)).toBeLessThan(0.12); // of ln(ratio); one standard error of the mean bias is about 0.03
  });

  it('are compared by their ratio in each night, so that a great flight seen by one alone does not count', () => {
    const observations = inventedSideBySide(randomFrom(3), { ...pair, places: 'unknown' });
    const lonely: SideBySideCatch = { treatment: 'bucket', block: 'the great night', place: null, count: 900, nights: 1 };
    const [without, withIt] = [compareSideBySide(observations), compareSideBySide([...observations, lonely])];
    if (!without.known || !withIt.known) throw new Error('not known');
    expect(withIt.ratios[0]!.ratio.value).toBeCloseTo(without.ratios[0]!.ratio.value, 9);
    expect(withIt.leftOut).toEqual({ alone: 1, empty: without.leftOut.empty });
  });

  it('are told apart the same whichever comes first', () => {
    const observations = inventedSideBySide(randomFrom(4), pair).toSorted((a, b) => a.treatment.localeCompare(b.treatment));
    const swapped = observations.toSorted((a, b) => b.treatment.localeCompare(a.treatment));
    const [one, other] = [compareSideBySide(observations), compareSideBySide(swapped)];
    if (!one.known || !other.known) throw new Error('not known');
    expect(one.ratios[0]!.treatment).toBe(other.ratios[0]!.against);
    expect(one.ratios[0]!.ratio.low * other.ratios[0]!.ratio.high).toBeCloseTo(1, 4);
  });

  it('that never changed posts, or whose posts nobody wrote down, carry a caution', () => {
    const cautionsFor = (places: 'rotated' | 'fixed' | 'unknown') => {
      const found = compareSideBySide(inventedSideBySide(randomFrom(6), { ...pair, places }));
      return found.known ? found.cautions : null;
    };
    expect(cautionsFor('rotated')).toEqual([]);
    expect(cautionsFor('fixed')).toEqual(['always-same-place']);
    expect(cautionsFor('unknown')).toEqual(['place-unknown']);
  });

  it('at rotated posts are not misled by a good post', () => {
    const good = inventedSideBySide(randomFrom(8), { ...pair, blocks: 40, ratio: 1, k: 20 }).map((row) =>
      row.place === 'post 0' ? { ...row, count: row.count * 4 } : row,
    );
    const found = compareSideBySide(good);
    if (!found.known) throw new Error('not known');
    expect(Math.abs(Math.log(found.ratios[0]!.ratio.value))).toBeLessThan(0.25);
  });

  it('say how many more shared nights a useful ratio takes', () => {
    const [few, many] = [10, 160].map((blocks) => compareSideBySide(inventedSideBySide(randomFrom(2), { ...pair, blocks })));
    if (!few!.known || !many!.known) throw new Error('not known');
    expect(few!.ratios[0]!.blocksForUsefulRatio).toBeGreaterThan(10);
    expect(many!.ratios[0]!.blocksForUsefulRatio).toBeLessThan(160);
  });
});

describe('three designs, each beside another now and then', () => {
  it('are compared by way of the one they shared, and only where they stood together', () => {
    const random = randomFrom(12);
    const together = (first: string, second: string, times: number, ratio: number, from: number) =>
      Array.from({ length: times }, (_, i) => i + from).flatMap((night) =>
        [first, second].map(
          (treatment, j): SideBySideCatch => ({
            treatment,
            block: `night ${night}`,
            place: null,
            nights: 1,
            count: random.negativeBinomial(8 * (j ? ratio : 1), 20),
          }),
        ),
      );
    const found = compareSideBySide([
      ...together('bucket', 'mesh-cone', 12, 2, 0),
      ...together('mesh-cone', 'wire-cone', 12, 2, 12),
    ]);
    if (!found.known) throw new Error('not known');
    expect(found.ratios.map(({ against, treatment }) => [against, treatment])).toEqual([
      ['bucket', 'mesh-cone'],
      ['mesh-cone', 'wire-cone'],
    ]);
    for (const { ratio } of found.ratios) expect(Math.abs(Math.log(ratio.value / 2))).toBeLessThan(0.35);
    expect(reasonOf([...together('bucket', 'mesh-cone', 8, 2, 50), ...together('sticky', 'wire-cone', 8, 2, 70)])).toBe(
      'not-connected',
    );
  });
});

describe('a comparison is refused', () => {
  it('with what is needed, when pairs or moths are too few', () => {
    const rows = inventedSideBySide(randomFrom(1), { ...pair, blocks: 4 });
    const found = compareSideBySide(rows);
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
