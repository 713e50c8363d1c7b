/** What was written here and the server has not counted yet, laid over the views it gave: facts only, no rate and no verb. */
import {
  addDays,
  type CheckRecord,
  type DecisionRecord,
  day,
  daysBetween,
  type FieldView,
  formatDay,
  type LureRecord,
  type SampleRecord,
  type StageRecord,
  type StationPlace,
  type StationTrap,
  sampleShown,
  type TrapRecord,
  type TrapsView,
  type TreatmentRecord,
  trapVisit,
} from '@duskwatch/core';
import type { OutboxEntry, StoredKind, ValueOf } from '../../sync/types.ts';

/** The last word on each record that waits here; removals are left to the server. */
export function waiting<K extends StoredKind>(entries: readonly OutboxEntry[], kind: K): ValueOf<K>[] {
  const last = new Map<string, ValueOf<K> | null>();
  for (const { state, revision } of entries) {
    if (state === 'pending' && revision.kind === kind) last.set(revision.recordId, revision.value as ValueOf<K> | null);
  }
  return [...last.values()].filter((value) => value !== null);
}

export function fieldLater(view: FieldView, entries: readonly OutboxEntry[]): FieldView {
  const { fieldId } = view.field;
  const own = <T extends { readonly fieldId: string }>(records: readonly T[]) =>
    records.filter((each) => each.fieldId === fieldId);
  const stages = own(waiting(entries, 'stages') as StageRecord[]);
  const samples = own(waiting(entries, 'samples') as SampleRecord[]);
  const treatments = own(waiting(entries, 'treatments') as TreatmentRecord[]);
  const decisions = own(waiting(entries, 'decisions') as DecisionRecord[]);
  if (stages.length + samples.length + treatments.length + decisions.length === 0) return view;
  return {
    ...view,
    stages: merged(
      view.stages,
      stages.map(({ stage, observedOn }) => ({ stage, observedOn })),
      (each) => each.observedOn,
    ),
    insects: view.insects.map((insect) => ({
      ...insect,
      samples: merged(
        insect.samples,
        samples
          .filter((each) => each.insect === insect.insect.id)
          .map((each) => ({ ...sampleShown(each), photo: each.photo ?? null })),
        (each) => `${each.sampledOn}|${each.kind}`,
      ),
      treatments: merged(
        insect.treatments,
        treatments
          .filter((each) => each.insect === insect.insect.id)
          .map(({ appliedOn, appliedAt, product, protectsDays, rate, rateUnit }) => ({
            appliedOn,
            appliedAt: appliedAt ?? null,
            product,
            rate: rate ?? null,
            rateUnit: rateUnit ?? null,
            protectsUntil: protectsDays === null ? null : formatDay(addDays(day(appliedOn), protectsDays)),
            coversUntil: null,
          })),
        (each) => `${each.appliedOn}|${each.product}`,
      ),
      decisions: merged(
        insect.decisions,
        decisions
          .filter((each) => each.insect === insect.insect.id)
          .map(({ decidedOn, decision, reason, note }) => ({ decidedOn, decision, reason, note })),
        (each) => `${each.decidedOn}|${each.decision}`,
      ),
    })),
  };
}

function merged<T>(held: readonly T[], later: readonly T[], key: (each: T) => string): T[] {
  const keys = new Set(later.map(key));
  return [...held.filter((each) => !keys.has(key(each))), ...later].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

/** @param insectNameOf names of insects that no trap of the view is for */
export function stationsLater(
  view: TrapsView,
  entries: readonly OutboxEntry[],
  insectNameOf: (id: string) => StationTrap['insect'],
): { readonly view: TrapsView; readonly notSent: ReadonlySet<string> } {
  const traps = waiting(entries, 'traps') as TrapRecord[];
  const checks = waiting(entries, 'checks') as CheckRecord[];
  const lures = waiting(entries, 'lures') as LureRecord[];
  const notSent = new Set([...traps, ...checks, ...lures].map(({ trapId }) => trapId));
  if (notSent.size === 0) return { view, notSent };
  const placed = new Map(traps.map((trap) => [trap.trapId, trap]));
  const known = new Set(view.places.flatMap((place) => place.traps.map(({ trapId }) => trapId)));
  const changed = (trap: StationTrap): StationTrap => {
    const record = placed.get(trap.trapId);
    const withRecord = record ? { ...trap, ...factsOf(view, record) } : trap;
    return withVisits(withRecord, checks, lures, view.on);
  };
  const places = view.places.map((place) => ({ ...place, traps: place.traps.map(changed) }));
  const added = traps
    .filter(({ trapId }) => !known.has(trapId))
    .map((record): StationPlace => {
      const blank = { trapId: record.trapId, informs: [], lure: null, lastVisit: null, skipped: null, newest: null, seasons: [] };
      const trap: StationTrap = { ...blank, check: null, insect: insectNameOf(record.insect), ...factsOf(view, record) };
      return {
        station: record.station,
        place: 1,
        places: 1,
        latitude: record.latitude,
        longitude: record.longitude,
        movedM: null,
        firstHungOn: record.hungOn,
        inUse: trap.state === 'hanging',
        due: false,
        traps: [withVisits(trap, checks, lures, view.on)],
      };
    });
  return { view: { ...view, places: [...added, ...places] }, notSent };
}

function factsOf(view: TrapsView, { design, hungOn, takenDownOn, latitude, longitude }: TrapRecord) {
  const state: StationTrap['state'] =
    hungOn > view.on ? 'planned' : takenDownOn !== null && takenDownOn <= view.on ? 'taken-down' : 'hanging';
  return { design, hungOn, takenDownOn, latitude, longitude, state, ...(state === 'hanging' ? {} : { check: null }) };
}

function withVisits(trap: StationTrap, checks: readonly CheckRecord[], lures: readonly LureRecord[], on: string): StationTrap {
  const check = newest(checks, trap.trapId, (each) => `${each.checkedOn}|${each.visit}`);
  const lure = newest(lures, trap.trapId, (each) => each.placedOn);
  const visit = check && trapVisit(check);
  const newer = visit && (trap.lastVisit === null || visit.on >= trap.lastVisit.on);
  const fresher = lure && (trap.lure === null || lure.placedOn >= trap.lure.placedOn);
  return {
    ...trap,
    ...(newer ? { lastVisit: visit } : {}),
    ...(fresher
      ? {
          lure: {
            placedOn: lure.placedOn,
            lifeDays: lure.lifeDays,
            ageDays: daysBetween(day(lure.placedOn), day(on)),
            ends: lure.lifeDays === null ? null : formatDay(addDays(day(lure.placedOn), lure.lifeDays)),
            spent: lure.lifeDays === null ? null : addDays(day(lure.placedOn), lure.lifeDays) < day(on),
          },
        }
      : {}),
  };
}

const newest = <T extends { readonly trapId: string }>(records: readonly T[], trapId: string, order: (each: T) => string) =>
  records
    .filter((each) => each.trapId === trapId)
    .reduce<T | null>((best, each) => (best && order(best) > order(each) ? best : each), null);
