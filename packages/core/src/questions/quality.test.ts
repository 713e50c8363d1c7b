import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { CheckRecord } from '../records/schema.ts';
import { betaCdf } from '../statistics/incomplete-beta.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { atLeast, atMost, probabilityOf } from './counts.ts';
import { questionInWords } from './in-words.ts';
import { inventedSeason, ON, rewritten } from './invented-season.testing.ts';
import { recordQuestions } from './questions.ts';
import type { RecordQuestion } from './types.ts';

const SEEDS = Array.from({ length: 10 }, (_, i) => 1001 + i);
const EARWORM = '3-helicoverpa-zea';
const ARMYWORM = '3-spodoptera-frugiperda';

const asked = (program: Program): readonly RecordQuestion[] => recordQuestions(program, { on: ON }).questions;
/** Seeds whose season, once spoilt, raises a question of the kind that names every check meant. */
const found = (kind: RecordQuestion['kind'], spoil: (program: Program) => { program: Program; about: readonly CheckRecord[] }) =>
  SEEDS.filter((seed) => {
    const { program, about } = spoil(inventedSeason(seed));
    return asked(program).some(
      (question) =>
        question.kind === kind &&
        about.every(({ trapId, checkedOn }) =>
          question.checks.some((check) => check.trapId === trapId && check.checkedOn === checkedOn),
        ),
    );
  }).length;

const visitsOf = ({ checks }: Program, trapId: string) => checks.filter((check) => check.trapId === trapId);
/** The visit of a trap at the height of its flight. */
const highest = (program: Program, trapId: string) =>
  visitsOf(program, trapId).reduce((best, check) => (check.targetCount! > best.targetCount! ? check : best));
const only = (program: Program, which: (check: CheckRecord) => boolean, change: (check: CheckRecord) => Partial<CheckRecord>) =>
  rewritten(program, (check) => (which(check) ? change(check) : {}));

describe('sound seasons', () => {
  it.each([
    ['eight farms', {}],
    ['four farms whose counts scatter more', { farms: 4, k: 1.2 }],
  ])('of %s are asked nothing nine times in ten, as promised', (_, season) => {
    const noisy = Array.from({ length: 30 }, (_, i) => asked(inventedSeason(2001 + i, season))).filter(
      (found) => found.length > 0,
    );
    // Binomial (30, 7 × 0.015): 9 or more would come about once in three hundred.
    expect(betaCdf(7 * 0.015, 9, 22)).toBeLessThan(0.01);
    expect(noisy.length).toBeLessThan(9);
  });

  it('with designs, fading lures and drifting places are asked about exchanged traps in fewer than one season of five', () => {
    const effects = { designs: true, lures: true, placeLogSd: 0.95, driftLogSd: 0.5 };
    const seasons = [
      ...Array.from({ length: 8 }, (_, i) => inventedSeason(4001 + i, effects)),
      ...Array.from({ length: 4 }, (_, i) => inventedSeason(4101 + i, { ...effects, farms: 6, oneFarm: true, k: 4.5 })),
    ];
    const noisy = seasons.filter((program) => asked(program).some(({ kind }) => kind === 'swapped-traps'));
    expect(noisy.length).toBeLessThanOrEqual(2);
  }, 60_000);

  it('of four traps of a kind on one farm never look exchanged: no trap is read by the one it is held against', () => {
    const programs = Array.from({ length: 12 }, (_, i) => inventedSeason(3001 + i, { farms: 4, oneFarm: true }));
    expect(programs.filter((program) => asked(program).some(({ kind }) => kind === 'swapped-traps'))).toEqual([]);
  });

  it('hold every fit visit that two others of its kind can speak for', () => {
    const { visits, compared } = recordQuestions(inventedSeason(1), { on: ON });
    expect(visits).toBeGreaterThan(600);
    expect(compared / visits).toBeGreaterThan(0.9);
    const alone = { ...inventedSeason(1), ...{ traps: inventedSeason(1).traps.slice(0, 3) } };
    expect(recordQuestions(alone, { on: ON })).toMatchObject({ compared: 0, questions: [] });
  });
});

describe('a fault that people make', () => {
  it('a nought too many at the height of a flight is asked about', () => {
    const hits = found('unlikely-count', (program) => {
      const about = highest(program, EARWORM);
      return {
        program: only(
          program,
          (check) => check === about,
          () => ({ targetCount: about.targetCount! * 10 }),
        ),
        about: [about],
      };
    });
    expect(hits).toBeGreaterThanOrEqual(8);
  });

  it('target and others in each other’s column are recognised as that, not as an odd count', () => {
    let odd = 0;
    const hits = found('columns-swapped', (program) => {
      const about = highest(program, EARWORM);
      const spoilt = only(
        program,
        (check) => check === about,
        ({ targetCount, otherCount }) => ({ targetCount: otherCount, otherCount: targetCount }),
      );
      odd += asked(spoilt).filter(({ kind, checks }) => kind === 'unlikely-count' && checks[0]!.trapId === EARWORM).length;
      return { program: spoilt, about: [about] };
    });
    expect(hits).toBeGreaterThanOrEqual(8);
    expect(odd).toBe(0);
  });

  it('one figure at six visits in a row of a flight is asked about', () => {
    const hits = found('repeated-count', (program) => {
      const visits = visitsOf(program, EARWORM);
      const about = visits.slice(visits.length / 2, visits.length / 2 + 6);
      return {
        program: only(
          program,
          (check) => about.includes(check),
          () => ({ targetCount: 12 }),
        ),
        about,
      };
    });
    expect(hits).toBeGreaterThanOrEqual(9);
  });

  it('one figure in ten traps of a farm on one day is asked about', () => {
    const hits = SEEDS.filter((seed) => {
      const program = inventedSeason(seed, { farms: 4, oneFarm: true });
      const on = highest(program, EARWORM).checkedOn;
      const about = program.checks.filter((check) => check.checkedOn === on).slice(0, 10);
      const spoilt = only(
        program,
        (check) => about.includes(check),
        () => ({ targetCount: 6 }),
      );
      return asked(spoilt).some((question) => question.kind === 'same-count-everywhere' && question.checks[0]!.checkedOn === on);
    });
    expect(hits.length).toBeGreaterThanOrEqual(9);
  });

  it('a scout who rounds larger catches to fives is asked whether they are estimates', () => {
    const hits = SEEDS.filter((seed) => {
      const program = only(
        inventedSeason(seed),
        ({ trapId, targetCount }) => trapId.startsWith('3-') && targetCount! >= 8,
        ({ targetCount }) => ({ targetCount: 5 * Math.round(targetCount! / 5) }),
      );
      return asked(program).some(({ kind, farm }) => kind === 'rounded-counts' && farm === 'farm 3');
    });
    expect(hits.length).toBeGreaterThanOrEqual(9);
  });

  it('a trap that catches nothing all season while its neighbours do is asked about', () => {
    const hits = found('silent-trap', (program) => ({
      program: only(
        program,
        ({ trapId }) => trapId === EARWORM,
        () => ({ targetCount: 0 }),
      ),
      about: visitsOf(program, EARWORM).slice(-1),
    }));
    expect(hits).toBeGreaterThanOrEqual(9);
  });

  it('the checks of a silent trap stand beside what its neighbours caught in the same nights', () => {
    const program = only(
      inventedSeason(1001),
      ({ trapId }) => trapId === EARWORM,
      () => ({ targetCount: 0 }),
    );
    const silent = asked(program).find(({ kind, checks }) => kind === 'silent-trap' && checks[0]?.trapId === EARWORM);
    const checks = silent?.checks ?? [];
    expect(checks.length).toBeGreaterThan(0);
    for (const { trapId, checkedOn, neighbours } of checks) {
      expect(neighbours.length).toBeGreaterThanOrEqual(2);
      for (const each of neighbours) {
        expect(each.trapId).not.toBe(trapId);
        expect(each.from < checkedOn).toBe(true);
      }
    }
    expect(checks.flatMap(({ neighbours }) => neighbours).some(({ count }) => count > 0)).toBe(true);
  });

  it('two traps of a post written down for each other since midsummer are recognised, with about the day', () => {
    const since = '2026-07-20';
    const hits = SEEDS.filter((seed) => {
      const program = inventedSeason(seed);
      const other = { [EARWORM]: ARMYWORM, [ARMYWORM]: EARWORM } as Record<string, string>;
      const spoilt = rewritten(program, ({ trapId, checkedOn }) =>
        checkedOn >= since && other[trapId] ? { trapId: other[trapId]! } : {},
      );
      return asked(spoilt).some(
        (question) =>
          question.kind === 'swapped-traps' &&
          [...question.traps].sort().join() === [EARWORM, ARMYWORM].sort().join() &&
          Math.abs(day(question.from) - day(since)) <= 21,
      );
    });
    expect(hits.length).toBeGreaterThanOrEqual(6);
  });

  it('checks of several days entered within two minutes are asked about, a round entered on its evening is not', () => {
    const program = inventedSeason(1);
    const visits = visitsOf(program, EARWORM).slice(0, 6);
    const entered = (at: (check: CheckRecord, i: number) => string) =>
      recordQuestions(program, { on: ON, entries: visits.map((check, i) => ({ check, author: 'scout 3', at: at(check, i) })) });
    const bulk = entered((_, i) => `2026-07-01T20:00:${10 + i}Z`).questions.filter(({ kind }) => kind === 'entered-in-bulk');
    expect(bulk).toMatchObject([{ author: 'scout 3', days: 6, whom: 'whoever-entered', probability: null }]);
    const evenings = entered((check) => `${check.checkedOn}T20:00:00Z`).questions;
    expect(evenings.filter(({ kind }) => kind === 'entered-in-bulk')).toEqual([]);
  });
});

describe('what is asked', () => {
  it('says what is odd, how odd, and whom to ask, and blames nobody', () => {
    const program = inventedSeason(SEEDS[0]!);
    const about = highest(program, EARWORM);
    const spoilt = only(
      program,
      (check) => check === about,
      () => ({ targetCount: 4000 }),
    );
    const [question] = asked(spoilt);
    expect(question).toMatchObject({ kind: 'unlikely-count', side: 'high', farm: 'farm 3', whom: 'scout' });
    expect(question!.inSeason).toBeGreaterThanOrEqual(question!.probability!);
    expect(questionInWords(question!, 'en')).toMatch(/^3-helicoverpa-zea on .*: 4000, where .* probability .* Ask the scout/);
    expect(questionInWords(question!, 'es')).toMatch(
      /^3-helicoverpa-zea, .*: 4000, donde .* probabilidad .* Pregunte a quien revisó/,
    );
  });

  it('knows nothing that was written later', () => {
    const program = inventedSeason(SEEDS[0]!);
    const about = highest(program, EARWORM);
    const spoilt = only(
      program,
      (check) => check === about,
      () => ({ targetCount: 4000 }),
    );
    const before = addDays(day(about.checkedOn), -1);
    const { questions } = recordQuestions(spoilt, { on: before });
    expect(questions.flatMap(({ checks }) => checks).every(({ checkedOn }) => checkedOn <= formatDay(before))).toBe(true);
  });
});

describe('tails of a count', () => {
  it('add up to one with the count itself between them', () => {
    const belief = { mean: 7.3, k: 1.4 };
    for (const count of [0, 1, 5, 30]) {
      expect(atLeast(count, belief) + atMost(count, belief) - probabilityOf(count, belief)).toBeCloseTo(1, 12);
      let sum = 0;
      for (let y = 0; y <= count; y++) sum += probabilityOf(y, belief);
      expect(atMost(count, belief)).toBeCloseTo(sum, 12);
    }
  });

  it('about a mean known from a gamma variate are those of its mixture, as drawn', () => {
    const random = randomFrom(7);
    const belief = { mean: 8, k: 2, meanShape: 3 };
    const draws = 40_000;
    let high = 0;
    for (let i = 0; i < draws; i++) {
      // A gamma variate of shape 3 and scale 1: three exponential ones added up.
      const gamma = -Math.log(random.uniform() * random.uniform() * random.uniform());
      if (random.negativeBinomial((8 * 3) / gamma, 2) >= 40) high++;
    }
    const error = (3 * Math.sqrt(high)) / draws;
    expect(Math.abs(atLeast(40, belief) - high / draws)).toBeLessThan(error);
    expect(atLeast(40, belief) + atMost(39, belief)).toBeCloseTo(1, 9);
  });
});
