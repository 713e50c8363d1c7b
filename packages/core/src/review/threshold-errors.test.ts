import { describe, expect, it } from 'vitest';
import { randomFrom } from '../statistics/random.testing.ts';
import { catchToInfestation } from './catch-to-infestation.ts';
import { LAGS } from './coverage.testing.ts';
import { catchAtLag, expectedAt, fieldwise, fitsByLag, withoutEach } from './infestation-fit.ts';
import { inventedInfestation } from './invented.testing.ts';
import { errorsOfThreshold } from './threshold-errors.ts';

const crop = { lag: 12, intercept: -3.5, slope: 0.9, pairs: 40, examined: 100 };
const SEEDS = Array.from({ length: 12 }, (_, i) => 500 + i);
const READ = { ruleLevel: LAGS.ruleLevel, lag: 12, window: LAGS.window, level: 0.8 };

describe('the error rates of a threshold', () => {
  it('of two samples at the rule and two below it are counted by hand', () => {
    const pair = (found: number, perNight: number) => ({
      field: 'F1',
      examined: 100,
      found,
      catches: [{ before: 12, perNight }],
    });
    const { missed, needless } = rates(errorsOfThreshold([pair(20, 5), pair(30, 1), pair(2, 6), pair(1, 0)], 4, READ));
    expect([missed, needless]).toEqual([
      { wrong: 1, of: 2 },
      { wrong: 1, of: 2 },
    ]);
  });

  it('that are told of a suggestion are those it has on new samples of the same fields, as simulated', () => {
    let [told, true_, answered] = [0, 0, 0];
    for (const seed of SEEDS) {
      const learned = catchToInfestation(inventedInfestation(randomFrom(seed), crop), LAGS);
      if (!learned.known) continue;
      answered++;
      const { suggestion } = learned;
      const wrong = suggestion.falseAlarms.infested + suggestion.misses.infested;
      told += wrong / (suggestion.falseAlarms.examined + suggestion.misses.examined);
      const fresh = inventedInfestation(randomFrom(10_000 + seed), { ...crop, pairs: 400 });
      const after = errorsOfThreshold(fresh, suggestion.perNight, { ...READ, lag: learned.lag.value });
      true_ += (after.falseAlarms.infested + after.misses.infested) / fresh.length;
    }
    expect(answered).toBeGreaterThan(8);
    // Each told rate has a standard error of about 0.06 with 40 samples; their mean over ten or so, 0.02.
    expect(Math.abs(told - true_) / answered).toBeLessThan(0.05);
  });

  it('of a threshold far too high miss everything and call nothing', () => {
    const pairs = inventedInfestation(randomFrom(3), crop);
    const { missed, needless } = rates(errorsOfThreshold(pairs, 1e6, READ));
    expect(missed.wrong).toBe(missed.of);
    expect(needless.wrong).toBe(0);
  });
});

describe('the fitted curve', () => {
  it('passes through the fit, and its interval holds the true share in most seasons', () => {
    // Of counted catch, which scatters about the flight: the true curve in it is a little flatter than a logistic one.
    const truth = meanShareNear(inventedInfestation(randomFrom(77), { ...crop, pairs: 4000 }), 4);
    let [held, all] = [0, 0];
    for (const seed of SEEDS) {
      const pairs = inventedInfestation(randomFrom(seed), { ...crop, pairs: 60 });
      const options = { ...LAGS, lags: [12], window: 1 };
      const fit = fieldwise(fitsByLag(pairs, options), withoutEach(pairs, options))!;
      const at = expectedAt(fit, 4, { response: 'share-infested', limit: 1.28 });
      expect(at.value).toBeCloseTo(1 / (1 + Math.exp(-fit.intercept - fit.slope * Math.log1p(4))), 12);
      expect(at.low).toBeLessThan(at.value);
      expect(at.high).toBeGreaterThan(at.value);
      all++;
      if (at.low <= truth && truth <= at.high) held++;
    }
    expect(held / all).toBeGreaterThan(0.5);
  });
});

function rates({ misses, falseAlarms }: ReturnType<typeof errorsOfThreshold>) {
  const counted = ({ infested, examined }: typeof misses) => ({ wrong: infested, of: examined });
  return { missed: counted(misses), needless: counted(falseAlarms) };
}

/** Mean share found where about so many moths were counted. */
function meanShareNear(pairs: ReturnType<typeof inventedInfestation>, perNight: number): number {
  const near = pairs.filter((pair) => Math.abs((catchAtLag(pair, 12, 1) ?? -1) - perNight) <= 0.5);
  return near.reduce((sum, { found, examined }) => sum + found / examined, 0) / near.length;
}
