/** The round: every station with a trap hanging, in driving order, with what somebody there must know. */

import { stageOf } from '../advice/crop-stage.ts';
import { checkDue, hanging, lureEnds } from '../advice/due.ts';
import { historyOf, type Prepared } from '../advice/prepare.ts';
import { doubtAbout } from '../advice/soundness.ts';
import { labelCautions } from '../advice/treatment.ts';
import { day, daysBetween, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { cropById, designFacts, insectById } from '../catalogue/index.ts';
import { driveOrder } from '../planning/route.ts';
import { VISITS_TOLD } from '../questions/next-count.ts';
import type { FieldRecord, TrapRecord } from '../records/schema.ts';
import type { RoundField, RoundStop, RoundTrap, RoundView } from './round-schema.ts';
import { skipOf } from './skipped.ts';
import { standingSkip } from './standing-skip.ts';
import { insectName } from './week.ts';

/** A station as far as its place in the driving order hangs on it. */
export interface RoundPlace {
  readonly id: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly due: boolean;
}

/** All stations in driving order, and the great-circle kilometres past those that are due. */
export interface RoundWay {
  readonly order: readonly string[];
  readonly dueLengthKm: number;
}

/** What of a round takes time: seconds with thousands of stations. */
export function roundWay(places: readonly RoundPlace[]): RoundWay {
  const all = driveOrder(places);
  const due = places.filter((place) => place.due);
  return {
    order: all.order.map(({ id }) => id),
    dueLengthKm: due.length === places.length ? all.lengthKm : driveOrder(due).lengthKm,
  };
}

export const roundPlace = ({ station, latitude, longitude, due }: RoundStop): RoundPlace => ({
  id: station,
  latitude,
  longitude,
  due,
});

/** Every station with a trap hanging, in no order to drive by. */
export function roundStops(prepared: Prepared): RoundStop[] {
  const byStation = groupBy(hanging(prepared, [...prepared.traps.values()]), ({ station }) => station);
  return [...byStation].map(([station, there]) => roundStop(prepared, station, there));
}

export function roundAlong(prepared: Prepared, stops: readonly RoundStop[], way: RoundWay): RoundView {
  const { name, invented } = prepared.program.settings;
  const byId = new Map(stops.map((stop) => [stop.station, stop]));
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    stops: way.order.map((id) => byId.get(id)!),
    dueLengthKm: way.dueLengthKm,
  };
}

export function roundView(prepared: Prepared): RoundView {
  const stops = roundStops(prepared);
  return roundAlong(prepared, stops, roundWay(stops.map(roundPlace)));
}

function roundStop(prepared: Prepared, station: string, records: readonly TrapRecord[]): RoundStop {
  const traps = records.map((trap) => roundTrap(prepared, trap)).sort((a, b) => (a.trapId < b.trapId ? -1 : 1));
  const at = records.find((trap) => trap.latitude !== null && trap.longitude !== null);
  const fields = [...new Set(records.flatMap((trap) => trap.informs))]
    .map((id) => prepared.fields.get(id))
    .filter((field) => field !== undefined);
  return {
    station,
    latitude: at?.latitude ?? null,
    longitude: at?.longitude ?? null,
    due: traps.some((trap) => trap.due || trap.lure?.change),
    traps,
    fields: fields.map((field) => roundField(prepared, field)),
  };
}

function roundTrap(prepared: Prepared, trap: TrapRecord): RoundTrap {
  const { trapId, insect, design, hungOn } = trap;
  const { intervals } = historyOf(prepared, trap);
  const last = intervals.at(-1);
  const visits = (prepared.checksByTrap.get(trapId) ?? []).filter((check) => check.checkedOn <= formatDay(prepared.on));
  const visit = visits.reduce<(typeof visits)[number] | null>((newest, check) => {
    const later =
      !newest || check.checkedOn > newest.checkedOn || (check.checkedOn === newest.checkedOn && check.visit > newest.visit);
    return later ? check : newest;
  }, null);
  const known = insectById(insect);
  const due = checkDue(prepared, trap);
  const lure = lureEnds(prepared, trap);
  const placed = lure?.lure ?? newestLure(prepared, trapId);
  const { commonName, scientificName } = insectName(insect);
  const doubt = doubtAbout(prepared, trap);
  return {
    trapId,
    insect,
    insectName: commonName,
    scientificName,
    design,
    hungOn,
    heightM: designFacts(design)?.heightM ?? null,
    lastVisit: visit && {
      on: visit.checkedOn,
      visit: visit.visit,
      count: visit.targetCount,
      condition: visit.condition,
      emptied: visit.emptied,
      unfitReason: visit.unfitReason ?? null,
    },
    most: visits.reduce<number | null>(
      (most, { targetCount }) => (targetCount === null ? most : Math.max(most ?? 0, targetCount)),
      null,
    ),
    told: intervals.flatMap(({ count, nights }) => (count === null ? [] : [{ count, nights }])).slice(-VISITS_TOLD),
    skipped: standingSkip(skipOf(prepared, trapId), visit?.checkedOn ?? null),
    doubt: doubt && { kind: doubt.kind, nights: doubt.nights, count: doubt.count, expected: doubt.expected },
    checkDue: formatDay(due),
    due: due <= prepared.on || last?.noInformation === 'unfit',
    lure: placed && {
      placedOn: placed.placedOn,
      lifeDays: placed.lifeDays,
      ageDays: daysBetween(day(placed.placedOn), prepared.on),
      // A lure that would end before the next visit is changed at this one.
      change: lure !== null && lure.ends < prepared.on + usualGap(prepared, trap),
    },
    marks: known ? { note: known.marks.note, standing: known.marks.standing } : null,
    lookAlikes: (known?.lookAlikes ?? []).map(({ insect = null, name, note }) => ({ insect, name, note })),
  };
}

function usualGap(prepared: Prepared, trap: TrapRecord): number {
  const last = historyOf(prepared, trap).intervals.at(-1)?.to ?? day(trap.hungOn);
  return daysBetween(last, checkDue(prepared, trap));
}

function newestLure(prepared: Prepared, trapId: string) {
  const today = formatDay(prepared.on);
  const known = (prepared.luresByTrap.get(trapId) ?? []).filter((lure) => lure.placedOn <= today);
  return known.sort((a, b) => (a.placedOn < b.placedOn ? 1 : -1))[0] ?? null;
}

export function roundField(prepared: Prepared, field: FieldRecord): RoundField {
  const stage = stageOf(prepared, field);
  const { fieldId, name, farm, crop } = field;
  return {
    fieldId,
    name,
    farm,
    crop,
    stage: stage && { stage: stage.written, observedOn: stage.observedOn },
    stages: (cropById(crop)?.stages ?? []).map(({ id, name: stageName }) => ({ id, name: stageName })),
    keepOut: labelCautions(prepared, field).flatMap((caution) =>
      caution.kind === 'reentry' ? [{ until: caution.until, hours: caution.hours, product: caution.product }] : [],
    ),
  };
}
