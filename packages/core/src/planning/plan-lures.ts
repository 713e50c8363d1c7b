/** The lures that a plan takes: how long they last, and the days they are placed. */

import type { Prepared } from '../advice/prepare.ts';
import { day, type IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import { practicesFor } from '../catalogue/index.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import { type LureChange, lureChanges } from './lure-changes.ts';
import type { LureUse } from './lure-need.ts';
import type { PlanLine, SeasonPlan } from './plan-types.ts';
import type { lureLifeSchema } from './schema.ts';

export type LureLife = Shape<typeof lureLifeSchema>;

export function lureLife(prepared: Prepared, insect: string, stated: number | null = null): LureLife {
  if (stated !== null) return { days: stated, why: 'stated', source: null };
  const newest = prepared.program.lures
    .filter(({ trapId, lifeDays }) => lifeDays !== null && prepared.traps.get(trapId)?.insect === insect)
    .sort((a, b) => (a.placedOn < b.placedOn ? 1 : -1))[0];
  if (newest) return { days: newest.lifeDays!, why: 'own-records', source: null };
  const usual = practicesFor('handling-lures').find(({ id }) => id === 'lure-life');
  return { days: usual?.figure?.low ?? SEASON_ASSUMPTIONS.usualLureDays.value, why: 'practice', source: usual?.source ?? null };
}

export interface LineLures {
  readonly line: PlanLine;
  readonly life: LureLife;
  readonly changes: readonly LureChange[];
  /** The hanging and every change; empty while hanging or taking down is not known. */
  readonly uses: readonly LureUse[];
}

/** Lures of every line; `lifeDays` by insect, where the user says so and the line does not. */
export function planLures(
  prepared: Prepared,
  plan: SeasonPlan,
  lifeDays: Readonly<Record<string, number>> = {},
): readonly LineLures[] {
  return plan.lines.map((line): LineLures => {
    const life = lureLife(prepared, line.insect, line.lureLifeDays ?? lifeDays[line.insect] ?? null);
    const { hang, takeDown, insect, traps } = line;
    if (hang.on === null || takeDown.on === null || line.caution !== null) return { line, life, changes: [], uses: [] };
    const changes = lureChanges(day(hang.on), day(takeDown.on), life.days, line.checkDays.map(day));
    const use = (on: IsoDay): LureUse => ({ insect, on, lures: traps.count });
    return { line, life, changes, uses: [use(hang.on), ...changes.map(({ on }) => use(on))] };
  });
}
