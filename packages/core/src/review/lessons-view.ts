/** What a program's records teach, ready to draw: days as text, no figure without end, names for fields. */

import { type Day, formatDay } from '../base/day.ts';
import { designRatio } from '../catalogue/look-up.ts';
import type { Program } from '../records/program.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { CatchToInfestation } from './catch-to-infestation.ts';
import { catchAtLag } from './infestation-fit.ts';
import { daysAtLag } from './lag-axis.ts';
import type { Estimate } from './learned.ts';
import { lessonsOf } from './lessons.ts';
import type { BoundedEstimate, CatchToInfestationKnown, ErrorRate, Errors, LessonsView, LureLesson } from './lessons-schema.ts';
import { type LureDecay, shareLeft } from './lure-decay.ts';
import type { TreatmentRatio } from './side-by-side.ts';
import type { Compared } from './side-by-side-of.ts';
import type { ThresholdErrors } from './threshold-errors.ts';

export function lessonsView(program: Program, { on, level }: { readonly on: Day; readonly level: number }): LessonsView {
  const { sideBySide, lures, infestation } = lessonsOf(program, { on });
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  return {
    on: formatDay(on),
    level,
    sideBySide: sideBySide.map(({ learned, ...set }) => ({
      ...set,
      learned: learned.known
        ? { ...learned, ratios: learned.ratios.map((ratio) => ({ ...ratio, published: publishedRatio(set, ratio) })) }
        : learned,
    })),
    lures: lures.map(({ learned, ...set }) => ({ ...set, learned: learned.known ? drawnDecay(learned) : learned })),
    infestation: infestation.map(({ learned, pairs, lags, window, model, inForce, ...set }) => ({
      ...set,
      samples: pairs.map(({ field, sampledOn, examined, found, ...pair }) => ({
        field,
        name: fields.get(field)?.name ?? field,
        farm: fields.get(field)?.farm ?? '',
        sampledOn,
        examined,
        found,
        perNight: learned.known ? catchAtLag({ ...pair, field, examined, found }, learned.lag.value, learned.window) : null,
      })),
      heat: model && { modelId: model.id, unit: model.heat.unit },
      learned: learned.known
        ? { ...drawnInfestation(learned, set.response), lagDays: daysAtLag({ pairs, window }, learned.lag.value) }
        : learned,
      inForce: inForce && { ...inForce, errors: inForce.errors && errors(inForce.errors) },
    })),
  };
}

function publishedRatio({ insect, compared }: { insect: string; compared: Compared }, { treatment, against }: TreatmentRatio) {
  const found = compared === 'design' ? designRatio(insect, treatment as TrapDesign, against as TrapDesign) : null;
  return found && { low: found.low, high: found.high, source: found.source };
}

const WEEK = 7;
const CURVE_STEP_DAYS = 2;

function drawnDecay(decay: LureDecay): Extract<LureLesson['learned'], { known: true }> {
  const { halfLifeDays, weakens, oldestDays } = decay;
  const ages = Array.from({ length: Math.ceil(oldestDays / CURVE_STEP_DAYS) + 1 }, (_, i) =>
    Math.min(oldestDays, i * CURVE_STEP_DAYS),
  );
  const curve = ages.map((ageDays) => {
    const { value, low, high } = shareLeft(decay, ageDays);
    return { ageDays, value, low, high };
  });
  return {
    known: true,
    perWeek: interval(shareLeft(decay, WEEK)),
    halfLifeDays: interval(halfLifeDays),
    weakens,
    oldestDays,
    curve,
  };
}

function drawnInfestation(
  { lag, profile, fit, suggestion, curve, leftOut }: CatchToInfestation,
  response: CatchToInfestationKnown['response'],
): Omit<CatchToInfestationKnown, 'lagDays'> {
  const { perNight, notCalled } = suggestion;
  return {
    known: true,
    response,
    lag,
    profile,
    heterogeneity: fit.heterogeneity,
    curve,
    suggestion: { perNight, notCalled, errors: errors(suggestion) },
    leftOut,
  };
}

const errors = ({ falseAlarms, misses }: ThresholdErrors): Errors => ({ needless: rate(falseAlarms), missed: rate(misses) });

const rate = ({ infested, examined, share, low, high }: ThresholdErrors['misses']): ErrorRate => ({
  wrong: infested,
  of: examined,
  share: finite(share),
  low,
  high,
});

const interval = ({ value, low, high, level }: Estimate): BoundedEstimate => ({
  value: finite(value),
  low: finite(low),
  high: finite(high),
  level,
});

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** What a suggested threshold is written down as: two figures, which is more than its interval bears. */
export const writtenThreshold = (perNight: number): number => Number(perNight.toPrecision(2));
