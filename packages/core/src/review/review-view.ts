/** A season's review, ready to draw: days as text, fields by name. */
import type { Verb } from '../advice/types.ts';
import { type Day, formatDay, type IsoDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { SeasonWork } from './season-cost.ts';
import { type Calls, type Review, reviewSeason } from './season-review.ts';
import type { VerbRun } from './season-verbs.ts';
import type { SeasonVisits } from './season-visits.ts';

export interface TimingRow {
  readonly insect: string;
  readonly design: TrapDesign;
  readonly traps: number;
  readonly moths: number;
  /** Moths per trap per night with its interval; null where no night carried information. */
  readonly perNight: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly firstCatch: IsoDay | null;
  readonly peak: { readonly from: IsoDay; readonly to: IsoDay; readonly perNight: number } | null;
  /** When a tenth, half and nine tenths of the mean trap's moths had been caught; null without a catch. */
  readonly tenth: IsoDay | null;
  readonly half: IsoDay | null;
  readonly nineTenths: IsoDay | null;
  readonly unseenNights: number;
  readonly blindTrapNights: number;
}

/** Scout or Decide, and what followed. */
export interface CallRow {
  readonly field: string;
  readonly name: string;
  readonly insect: string;
  readonly verb: Verb;
  readonly from: IsoDay;
  readonly to: IsoDay;
  readonly ruleId: string | null;
  readonly sample: {
    readonly on: IsoDay;
    readonly kind: string;
    readonly examined: number;
    readonly infested: number | null;
  } | null;
  readonly treatment: { readonly on: IsoDay; readonly product: string } | null;
}

export interface ReviewPart {
  readonly timing: readonly TimingRow[];
  readonly visits: Pick<SeasonVisits, 'visits' | 'luresPlaced' | 'luresWithoutLife' | 'trapsWithoutLure' | 'unfit'> & {
    readonly missed: readonly {
      readonly trapId: string;
      readonly from: IsoDay;
      readonly to: IsoDay | null;
      readonly nights: number;
    }[];
    readonly lateLures: readonly {
      readonly trapId: string;
      readonly dueOn: IsoDay;
      readonly changedOn: IsoDay | null;
      readonly daysLate: number;
    }[];
  };
  readonly calls: Calls;
  readonly rows: readonly CallRow[];
  readonly work: SeasonWork;
}

export interface ReviewView {
  readonly year: number;
  readonly from: IsoDay;
  readonly to: IsoDay;
  /** Last day looked at; the season is still open before its end. */
  readonly through: IsoDay;
  readonly open: boolean;
  /** Days after a verb in which an act counts as following it. */
  readonly within: number;
  readonly daysChecked: number;
  readonly daysRead: number;
  readonly program: ReviewPart;
  readonly farms: readonly (ReviewPart & { readonly farm: string })[];
  readonly uncalled: readonly { readonly farm: string; readonly name: string; readonly insect: string; readonly on: IsoDay }[];
}

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

function callRow({ field, insect, verb, from, to, ruleId, followed }: VerbRun, name: string): CallRow {
  const { sample, treatment } = followed!;
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
  };
}

const orNull = (on: Day | null): IsoDay | null => (on === null ? null : formatDay(on));
