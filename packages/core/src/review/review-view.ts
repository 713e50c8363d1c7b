/** A season's review, ready to draw: days as text, fields by name. */

import { type Day, formatDay, type IsoDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { CallRow, ReviewPart, ReviewView, TimingRow } from './review-schema.ts';
import { outcomeOf, type Review, reviewSeason } from './season-review.ts';
import type { VerbRun } from './season-verbs.ts';
import type { SeasonVisits } from './season-visits.ts';

/** Tells after each day read how far it has come. */
export function* reviewView(
  program: Program,
  { on }: { readonly on: Day },
): Generator<{ readonly done: number; readonly of: number }, ReviewView, undefined> {
  const review = yield* reviewSeason(program, { on });
  const { season, through, open, verbs, farms } = review;
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  const name = (field: string) => fields.get(field)?.name ?? field;
  const part = ({ timing, visits, calls, work }: Review, runs: readonly VerbRun[]): ReviewPart => ({
    timing: timing.flatMap(timingRows),
    visits: drawnVisits(visits),
    calls,
    rows: runs.filter(({ followed }) => followed !== null).map((run) => callRow(run, name(run.field))),
    work,
  });
  return {
    year: season.year,
    from: formatDay(season.from),
    to: formatDay(season.to),
    through: formatDay(through),
    open,
    within: verbs.within,
    daysChecked: verbs.days.reduce((sum, { checked }) => sum + checked, 0),
    daysRead: verbs.days.reduce((sum, { read }) => sum + read, 0),
    program: part(review.program, verbs.runs),
    farms: farms.map((own) => ({
      farm: own.farm,
      ...part(
        own,
        verbs.runs.filter(({ farm }) => farm === own.farm),
      ),
    })),
    uncalled: verbs.treatmentsUncalled.map(({ field, insect, on }) => ({
      farm: fields.get(field)?.farm ?? '',
      name: name(field),
      insect,
      on: formatDay(on),
    })),
  };
}

function timingRows({ insect, firstCatch, designs }: Review['timing'][number]): TimingRow[] {
  return designs.map(({ design, traps, caught, peak, passed, unseenNights, blindTrapNights }) => {
    const by = (share: number) => orNull(passed.find((one) => one.share === share)?.on ?? null);
    return {
      insect,
      design,
      traps,
      moths: caught?.count ?? 0,
      perNight: caught && { value: caught.perNight, low: caught.low, high: caught.high },
      firstCatch: orNull(firstCatch?.on ?? null),
      peak: peak && { from: formatDay(peak.from), to: formatDay(peak.to), perNight: peak.perNight },
      tenth: by(0.1),
      half: by(0.5),
      nineTenths: by(0.9),
      unseenNights,
      blindTrapNights,
    };
  });
}

function drawnVisits({ visits, luresPlaced, luresWithoutLife, trapsWithoutLure, unfit, missed, lateLures }: SeasonVisits) {
  return {
    visits,
    luresPlaced,
    luresWithoutLife,
    trapsWithoutLure,
    unfit,
    missed: missed.map(({ trapId, from, to, nights }) => ({ trapId, from: formatDay(from), to: orNull(to), nights })),
    lateLures: lateLures.map(({ trapId, dueOn, changedOn, daysLate }) => ({
      trapId,
      dueOn: formatDay(dueOn),
      changedOn: orNull(changedOn),
      daysLate,
    })),
  };
}

function callRow(run: VerbRun, name: string): CallRow {
  const { field, insect, verb, from, to, ruleId, dueOn } = run;
  const { sample, treatment, decision, answer } = run.followed!;
  return {
    field,
    name,
    insect,
    verb,
    from: formatDay(from),
    to: formatDay(to),
    ruleId,
    sample: sample && { ...sample, on: formatDay(sample.on) },
    treatment: treatment && { ...treatment, on: formatDay(treatment.on) },
    decision: decision && { ...decision, on: formatDay(decision.on) },
    dueOn: orNull(dueOn),
    answer: answer && { ...answer, on: formatDay(answer.on) },
    outcome: outcomeOf(run),
    daysOpen: answer !== null || dueOn === null ? null : Math.max(0, to - dueOn),
  };
}

const orNull = (on: Day | null): IsoDay | null => (on === null ? null : formatDay(on));
