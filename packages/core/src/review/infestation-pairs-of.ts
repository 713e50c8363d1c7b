/** From a program's records to samples of fields with the catches before them. */

import { addDays, type Day, day, daysBetween, type IsoDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { canonicalCrop } from '../catalogue/crops/crop-words.ts';
import { rulesFor } from '../catalogue/look-up.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { Program } from '../records/program.ts';
import type { FieldRecord, SampleRecord, TrapDesign } from '../records/schema.ts';
import { TRAP_DESIGNS } from '../records/schema.ts';
import type { InfestationPair, Response } from './infestation-fit.ts';
import { trapHistories } from './trap-histories.ts';

/** A pair that names its sample. */
export interface SampledPair extends InfestationPair {
  readonly field: string;
  readonly sampledOn: IsoDay;
}

export interface InfestationPairs {
  readonly insect: string;
  readonly crop: string;
  /** What was looked at, as the samples say. */
  readonly kind: string;
  /** Designs are never mixed: one set for each. */
  readonly design: TrapDesign;
  readonly response: Response;
  /** The share the catalogue's strictest rule for crop, insect and units names; null where none does. */
  readonly ruleLevel: number | null;
  readonly pairs: readonly SampledPair[];
  /** Samples that could not be used. */
  readonly leftOut: {
    /** Nobody wrote how much was found. */
    readonly notCounted: number;
    /** Treated within the days before: the field no longer shows what the moths laid. */
    readonly treated: number;
    /** No fit visit of this design in the days before. */
    readonly noCatch: number;
  };
}

/** Days before a sample in which catches are looked up. Own choice: a generation from egg to large larva in cool weather. */
export const CATCH_DAYS_BEFORE = 40;

interface Candidate {
  readonly sample: SampleRecord;
  readonly field: FieldRecord;
  readonly design: TrapDesign;
  readonly response: Response;
}

/** Samples taken by `on`, by insect, crop, kind of unit and trap design. `before` is in days. */
export function infestationPairsOf(program: Program, { on }: { readonly on: Day }): InfestationPairs[] {
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  const histories = trapHistories(program, on);
  const intervalsOf = (fieldId: string, insect: string, design: TrapDesign) =>
    histories
      .filter(({ trap }) => trap.insect === insect && trap.design === design && trap.informs.includes(fieldId))
      .flatMap(({ history }) => history.intervals);
  const candidates = program.samples
    .filter(({ sampledOn, fieldId }) => day(sampledOn) <= on && fields.has(fieldId))
    .flatMap((sample): Candidate[] => {
      const watching = histories.filter(({ trap }) => trap.insect === sample.insect && trap.informs.includes(sample.fieldId));
      const designs = TRAP_DESIGNS.filter((design) => watching.some(({ trap }) => trap.design === design));
      const response = sample.unitsInfested === null && sample.totalCount !== null ? 'count-per-unit' : 'share-infested';
      return designs.map((design) => ({ sample, field: fields.get(sample.fieldId)!, design, response }));
    });
  const groups = groupBy(candidates, ({ sample, field, design, response }) =>
    [sample.insect, canonicalCrop(field.crop), sample.kind, design, response].join('\n'),
  );
  return [...groups.values()].map((group) => {
    const { sample, field, design, response } = group[0]!;
    const { insect, kind } = sample;
    const crop = canonicalCrop(field.crop);
    const leftOut = { notCounted: 0, treated: 0, noCatch: 0 };
    const pairs = group.flatMap(({ sample }): SampledPair[] => {
      const found = response === 'share-infested' ? sample.unitsInfested : sample.totalCount;
      const catches = nightsBefore(intervalsOf(sample.fieldId, insect, design), day(sample.sampledOn));
      const why =
        found === null ? 'notCounted' : wasTreated(program, sample) ? 'treated' : catches.length === 0 ? 'noCatch' : null;
      if (why !== null || found === null) {
        leftOut[why ?? 'notCounted']++;
        return [];
      }
      return [{ field: sample.fieldId, sampledOn: sample.sampledOn, examined: sample.unitsExamined, found, catches }];
    });
    const ruleLevel = response === 'share-infested' ? strictestShare(crop, insect, kind) : null;
    return { insect, crop, kind, design, response, ruleLevel, pairs, leftOut };
  });
}

/** Nightly rates of the fit visits before a day, one for each night seen: the mean over the traps that saw it. */
function nightsBefore(intervals: readonly CatchInterval[], sampledOn: Day): InfestationPair['catches'] {
  const fit = intervals.filter(({ count, condition }) => count !== null && condition === 'fit');
  return Array.from({ length: CATCH_DAYS_BEFORE }, (_, i) => i + 1).flatMap((before) => {
    const night = addDays(sampledOn, -before);
    const seen = fit.filter(({ from, to }) => from <= night && night < to && to <= sampledOn);
    if (seen.length === 0) return [];
    return [{ before, perNight: seen.reduce((sum, { count, nights }) => sum + count! / nights, 0) / seen.length }];
  });
}

function wasTreated({ treatments }: Program, { fieldId, insect, sampledOn }: SampleRecord): boolean {
  return treatments.some((treatment) => {
    const days = daysBetween(day(treatment.appliedOn), day(sampledOn));
    return treatment.fieldId === fieldId && treatment.insect === insect && days > 0 && days <= CATCH_DAYS_BEFORE;
  });
}

function strictestShare(crop: string, insect: string, kind: string): number | null {
  const shares = rulesFor({ crop, insect }).flatMap((rule) =>
    rule.kind === 'infestation' && rule.unit === kind ? [rule.share] : [],
  );
  return shares.length === 0 ? null : Math.min(...shares);
}
