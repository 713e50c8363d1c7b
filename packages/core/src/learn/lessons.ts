/** All that a program's own records can teach about its traps, lures and thresholds, and what they cannot yet. */
import type { Program } from '../records/program.ts';
import type { Day } from '../units/day.ts';
import { type CatchToInfestation, catchToInfestation, type NoThreshold } from './catch-to-infestation.ts';
import { type InfestationPairs, infestationPairsOf } from './infestation-pairs-of.ts';
import { type Learned, notKnown } from './learned.ts';
import { type LureAges, lureAgesOf } from './lure-ages-of.ts';
import { type LureDecay, lureDecay, type NoDecay } from './lure-decay.ts';
import { compareSideBySide, type NoComparison, type SideBySide } from './side-by-side.ts';
import { type SideBySideSet, sideBySideOf } from './side-by-side-of.ts';

/** A set of observations, how many there were of them, and what came of it. */
type Lesson<S, T, Reason extends string> = S & { readonly used: number; readonly learned: Learned<T, Reason> };

export interface Lessons {
  readonly sideBySide: readonly Lesson<Omit<SideBySideSet, 'observations'>, SideBySide, NoComparison>[];
  readonly lures: readonly Lesson<Omit<LureAges, 'observations'>, LureDecay, NoDecay>[];
  readonly infestation: readonly Lesson<Omit<InfestationPairs, 'pairs'>, CatchToInfestation, NoThreshold | 'no-rule-level'>[];
}

/** Lags tried, in days, each with the catches of the nights within half the window about it. Own choice. */
const LAGS = [3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33];
const WINDOW = 6;

/** Thresholds are suggestions: nothing here changes a rule. */
export function lessonsOf(program: Program, { on }: { readonly on: Day }): Lessons {
  const compared = [...sideBySideOf(program, { on }), ...sideBySideOf(program, { on, compared: 'lure-life' })];
  return {
    sideBySide: compared.map(({ observations, ...set }) => ({
      ...set,
      used: observations.length,
      learned: compareSideBySide(observations),
    })),
    lures: lureAgesOf(program, { on }).map(({ observations, ...set }) => ({
      ...set,
      used: observations.length,
      learned: lureDecay(observations),
    })),
    infestation: infestationPairsOf(program, { on }).map(({ pairs, ...set }) => ({
      ...set,
      used: pairs.length,
      learned:
        set.ruleLevel === null
          ? notKnown(
              'no-rule-level',
              `no rule for ${set.kind} with ${set.insect} in ${set.crop}`,
              'the share from which somebody acts',
              'Take samples of what the rule for this crop and insect looks at.',
              'ruleLevel',
            )
          : catchToInfestation(pairs, { ruleLevel: set.ruleLevel, response: set.response, lags: LAGS, window: WINDOW }),
    })),
  };
}
