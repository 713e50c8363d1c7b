/** All that a program's own records can teach about its traps, lures and thresholds, and what they cannot yet. */
import { lowestPerNight, ruleForDesign, rulesAmong } from '../advice/rules.ts';
import type { Day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { canonicalCrop } from '../catalogue/crops/crop-words.ts';
import type { Standing } from '../catalogue/types.ts';
import type { Program } from '../records/program.ts';
import { type CatchToInfestation, catchToInfestation, type NoThreshold } from './catch-to-infestation.ts';
import { type InfestationPairs, infestationPairsOf } from './infestation-pairs-of.ts';
import { type LagAxis, lagAxis } from './lag-axis.ts';
import { type Learned, notKnown } from './learned.ts';
import { type LureAges, lureAgesOf } from './lure-ages-of.ts';
import { type LureDecay, lureDecay, type NoDecay } from './lure-decay.ts';
import { compareSideBySide, type NoComparison, type SideBySide } from './side-by-side.ts';
import { type SideBySideSet, sideBySideOf } from './side-by-side-of.ts';
import { errorsOfThreshold, type ThresholdErrors } from './threshold-errors.ts';

/** A set of observations, how many there were of them, and what came of it. */
type Lesson<S, T, Reason extends string> = S & { readonly used: number; readonly learned: Learned<T, Reason> };

export interface Lessons {
  readonly sideBySide: readonly Lesson<Omit<SideBySideSet, 'observations'>, SideBySide, NoComparison>[];
  readonly lures: readonly Lesson<Omit<LureAges, 'observations'>, LureDecay, NoDecay>[];
  /** On the axis on which the lag is told. */
  readonly infestation: readonly (Lesson<
    Omit<InfestationPairs, 'pairs'> & LagAxis,
    CatchToInfestation,
    NoThreshold | 'no-rule-level'
  > & { readonly inForce: RuleInForce | null })[];
}

/** The rule that reads the catch today, and the errors it would have made on the same samples at the same lag. */
export interface RuleInForce {
  readonly ruleId: string;
  readonly source: string;
  readonly standing: Standing;
  /** Moths per trap per night from which it asks for a decision. */
  readonly perNight: number;
  readonly stages: readonly string[];
  readonly intervalDays: number | null;
  /** Null while no lag is known. */
  readonly errors: ThresholdErrors | null;
}

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
    infestation: infestationPairsOf(program, { on }).map((set) => {
      const onAxis = { ...set, ...lagAxis(program, set.insect, set.pairs, { on }) };
      const learned = fromPairs(onAxis);
      return { ...onAxis, used: set.pairs.length, learned, inForce: inForce(program, onAxis, learned, on) };
    }),
  };
}

function fromPairs({
  pairs,
  lags,
  window,
  ...set
}: Omit<InfestationPairs, 'pairs'> & LagAxis): Learned<CatchToInfestation, NoThreshold | 'no-rule-level'> {
  if (set.ruleLevel === null)
    return notKnown(
      'no-rule-level',
      `no rule for ${set.kind} with ${set.insect} in ${set.crop}`,
      'the share from which somebody acts',
      'Take samples of what the rule for this crop and insect looks at.',
      { parameter: 'ruleLevel' },
    );
  return catchToInfestation(pairs, { ruleLevel: set.ruleLevel, response: set.response, lags, window });
}

function inForce(
  { rules, settings }: Program,
  { pairs, crop, insect, design, ruleLevel, window }: Omit<InfestationPairs, 'pairs'> & LagAxis,
  learned: ReturnType<typeof fromPairs>,
  on: Day,
): RuleInForce | null {
  const own = { settings, rules: rules.map((rule) => ({ ...rule, crop: canonicalCrop(rule.crop) })) };
  const rule = ruleForDesign(rulesAmong(own, { crop, growthHabit: null, insect, on }).catch, design);
  if (rule === null) return null;
  const perNight = lowestPerNight(rule);
  const level = ASSUMPTIONS.intervalLevel.value;
  const usable = learned.known ? learned.samples.map(({ index }) => pairs[index]!) : [];
  return {
    ruleId: rule.id,
    source: rule.source,
    standing: rule.standing,
    perNight,
    stages: rule.stages ?? [],
    intervalDays: rule.kind === 'catch-threshold' ? rule.intervalDays : rule.tiers[0]!.intervalDays,
    errors:
      learned.known && ruleLevel !== null
        ? errorsOfThreshold(usable, perNight, { ruleLevel, lag: learned.lag.value, window, level })
        : null,
  };
}
