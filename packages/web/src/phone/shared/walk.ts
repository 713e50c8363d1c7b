/** A sample under way, as it is kept on the phone: complete, so that a new version of the catalogue changes nothing in it. */
import {
  type CountingPlan,
  countsInsects,
  designEffect,
  type IsoDay,
  placeNow,
  type Sampled,
  type SampleRecord,
  type ScoutingPlan,
  type ShareEstimate,
  type Standpoint,
  shareInfested,
  standpoint,
  type WalkedPlaces,
} from '@duskwatch/core';

export interface Walk {
  readonly id: string;
  readonly person: string;
  readonly fieldId: string;
  readonly insect: string;
  readonly startedOn: IsoDay;
  /** Null: no figure is published, and the units are only counted. */
  readonly plan: ScoutingPlan | null;
  readonly counting: CountingPlan | null;
  /** Unit by unit, in the order walked: insects, or 1 for an infested unit. */
  readonly counts: readonly number[];
  /** The crop's stage as seen on this walk; null: not looked at. */
  readonly stage: string | null;
}

export const walkId = (fieldId: string, insect: string): string => `${fieldId}|${insect}`;

export const sampledOf = ({ plan, counting }: Pick<Walk, 'plan' | 'counting'>): Sampled =>
  plan ?? { unit: counting!.unit, sign: 'infested' };

export const spreadOf = ({ plan, counting }: Pick<Walk, 'plan' | 'counting'>): WalkedPlaces => (plan ?? counting!).walk;

export interface Progress {
  readonly at: Standpoint;
  readonly ended: boolean;
  readonly place: ReturnType<typeof placeNow>;
  /** Where no figure is published: the share and how sure it is. */
  readonly share: ShareEstimate | null;
}

export function progressOf(walk: Walk): Progress {
  const place = placeNow(spreadOf(walk), walk.counts.length);
  if (walk.plan) {
    // A walk begun before places were judged as such goes on as it began.
    const at = standpoint({ ...walk.plan, perPlace: walk.plan.perPlace ?? 1 }, walk.counts);
    return { at, ended: at.judgement !== 'go-on', place, share: null };
  }
  const samples = walk.counts.length;
  const infested = walk.counts.filter((count) => count > 0).length;
  const mostMore = Math.max(0, walk.counting!.units - samples);
  const at: Standpoint = {
    judgement: mostMore > 0 ? 'go-on' : 'undecided-at-limit',
    samples,
    total: infested,
    infested,
    mostMore,
    cleanToBelow: null,
    infestedToAbove: null,
  };
  const { walk: spread, correlation = 0 } = walk.counting!;
  const effect = designEffect(Math.min(spread.perPlace, Math.max(1, samples)), correlation);
  return { at, ended: mostMore === 0, place, share: shareInfested(infested, samples, { designEffect: effect }) };
}

/** With one unit more; a walk that has ended takes none. */
export const withUnit = (walk: Walk, count: number): Walk =>
  progressOf(walk).ended ? walk : { ...walk, counts: [...walk.counts, count] };

export const withoutLast = (walk: Walk): Walk => ({ ...walk, counts: walk.counts.slice(0, -1) });

/** Whether the next unit is the first of another place than the one before. */
export const atNewPlace = (walk: Walk): boolean => walk.counts.length > 0 && walk.counts.length % spreadOf(walk).perPlace === 0;

/** Infested of examined at each place, in the order walked. */
function byPlace(walk: Walk): string[] {
  const { perPlace } = spreadOf(walk);
  return Array.from({ length: Math.ceil(walk.counts.length / perPlace) }, (_, place) => {
    const there = walk.counts.slice(place * perPlace, (place + 1) * perPlace);
    return `${there.filter((count) => count > 0).length}/${there.length}`;
  });
}

export function sampleOf(walk: Walk): SampleRecord {
  const sampled = sampledOf(walk);
  const { at } = progressOf(walk);
  return {
    fieldId: walk.fieldId,
    insect: walk.insect,
    sampledOn: walk.startedOn,
    kind: sampled.unit,
    unitsExamined: at.samples,
    unitsInfested: at.infested,
    totalCount: countsInsects(sampled) ? at.total : null,
    byPlace: byPlace(walk),
  };
}
