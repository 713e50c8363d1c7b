/** Numbers of traps and nights between checks side by side: what each is good for, ready for a table or a picture. */
import type { Shape } from '../base/shape.ts';
import { PLAN_ASSUMPTIONS } from '../scouting/assumptions.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { trapNumberRowSchema } from './schema.ts';
import { chanceOfWrongSide, relativePrecision, visitsInWindow } from './trap-number.ts';

export interface TrapQuestion {
  /** Dispersion of one trap's count at one visit; null: Poisson. */
  readonly k: number | null;
  /** Moths per trap per night at which the rule is reached. */
  readonly thresholdPerNight: number;
  readonly windowNights: number;
  readonly nightsBetweenChecks: number;
}

/** Who asks for other figures than the stated ones. */
export interface TrapWishes {
  /** Rates at which the rule must not be missed, or reached in error, as shares of its threshold. */
  readonly aboveShare?: number | undefined;
  readonly belowShare?: number | undefined;
  /** Accepted probability of missing the rule at `aboveShare`, and of reaching it in error at `belowShare`. */
  readonly riskMissed?: number | undefined;
  readonly riskFalse?: number | undefined;
  readonly mostTraps?: number | undefined;
  readonly fewestTraps?: number | undefined;
}

export type TrapNumberRow = Shape<typeof trapNumberRowSchema>;

export function trapNumberRow(question: TrapQuestion, traps: number, wishes: TrapWishes = {}): TrapNumberRow {
  const { thresholdPerNight, nightsBetweenChecks, k } = question;
  const wanted = wishesOf(wishes);
  const visits = visitsInWindow(question);
  const checking = { ...question, traps };
  const missed = chanceOfWrongSide(checking, thresholdPerNight * wanted.aboveShare, thresholdPerNight);
  const falseAlarm = chanceOfWrongSide(checking, thresholdPerNight * wanted.belowShare, thresholdPerNight);
  const atThreshold = { mean: thresholdPerNight * nightsBetweenChecks, k };
  return {
    traps,
    nightsBetweenChecks,
    visits,
    precision: relativePrecision(atThreshold, traps * visits, SEASON_ASSUMPTIONS.precisionLevel.value),
    missed,
    falseAlarm,
    enough: missed <= wanted.riskMissed && falseAlarm <= wanted.riskFalse,
  };
}

/** Every number of traps up to the most, for each of the nights between checks given. */
export function trapNumberTable(
  question: Omit<TrapQuestion, 'nightsBetweenChecks'>,
  nightsBetweenChecks: readonly number[],
  wishes: TrapWishes = {},
): TrapNumberRow[] {
  const { mostTraps } = wishesOf(wishes);
  return nightsBetweenChecks.flatMap((nights) =>
    Array.from({ length: mostTraps }, (_, i) => trapNumberRow({ ...question, nightsBetweenChecks: nights }, i + 1, wishes)),
  );
}

/**
 * The fewest traps that keep to both risks, at least `fewestTraps`; where even the most do not, the most, whose row says
 * `enough: false`. Because moths come in whole numbers a trap more can read a rule worse; so every larger number up to
 * the most must keep to the risks too.
 */
export function trapsEnough(question: TrapQuestion, wishes: TrapWishes = {}): TrapNumberRow {
  const { mostTraps, fewestTraps } = wishesOf(wishes);
  let row = trapNumberRow(question, mostTraps, wishes);
  for (let traps = mostTraps - 1; traps >= fewestTraps && row.enough; traps--) {
    const fewer = trapNumberRow(question, traps, wishes);
    if (!fewer.enough) break;
    row = fewer;
  }
  return row;
}

export const wishesOf = (wishes: TrapWishes) => ({
  aboveShare: wishes.aboveShare ?? PLAN_ASSUMPTIONS.aboveShare.value,
  belowShare: wishes.belowShare ?? PLAN_ASSUMPTIONS.belowShare.value,
  riskMissed: wishes.riskMissed ?? PLAN_ASSUMPTIONS.riskBelow.value,
  riskFalse: wishes.riskFalse ?? PLAN_ASSUMPTIONS.riskAbove.value,
  mostTraps: wishes.mostTraps ?? SEASON_ASSUMPTIONS.mostTraps.value,
  fewestTraps: wishes.fewestTraps ?? SEASON_ASSUMPTIONS.fewestTraps.value,
});
