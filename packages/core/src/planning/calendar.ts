/** What belongs in a calendar, as values: files are made at the edge. */
import { adviseAll } from '../advice/advise.ts';
import { checkDue, hanging, lureEnds } from '../advice/due.ts';
import { cellKey, growingYearStart, historyOf, type Prepared } from '../advice/prepare.ts';
import { addDays, type Day, day, formatDay, type IsoDay } from '../base/day.ts';
import type { TrapRecord } from '../records/schema.ts';
import type { LureOrder } from './lure-need.ts';
import type { LineLures } from './plan-lures.ts';

export type CalendarKind = 'hang' | 'check' | 'change-lure' | 'take-down' | 'order-lures' | 'scout' | 'decide';

/** An all-day entry. */
export interface CalendarEntry {
  /**
   * Made of what the entry is about and never of its date, so that a date that moves changes the entry instead of adding
   * one. Unique within a program; letters, digits, `%`, `-`, `_` and `.` only.
   */
  readonly uid: string;
  readonly kind: CalendarKind;
  readonly on: IsoDay;
  /** True when it was due before: `on` is then the day of asking. */
  readonly overdue: boolean;
  readonly farm: string | null;
  readonly station: string | null;
  readonly insects: readonly string[];
  readonly fields: readonly string[];
  readonly trapIds: readonly string[];
  /** Traps to hang or take down, or lures to order or change; null where there is nothing to count. */
  readonly quantity: number | null;
}

export interface PlannedWork {
  readonly season: number;
  readonly lines: readonly LineLures[];
  readonly orders: readonly LureOrder[];
}

/**
 * Everything to do, soonest first: what the plan foresees and what is due by the season’s own records. Where traps of a
 * farm already hang, their own next checks and lure changes take the place of the planned ones up to then.
 */
export function calendarEntries(prepared: Prepared, planned: PlannedWork | null = null): CalendarEntry[] {
  const due = dueEntries(prepared);
  const until = new Map<string, IsoDay>();
  for (const { kind, farm, on } of due) {
    const key = `${kind}\n${farm}`;
    if (farm !== null && on > (until.get(key) ?? '')) until.set(key, on);
  }
  const ahead = planned === null ? [] : planEntries(planned);
  const standing = ahead.filter(({ kind, farm, on }) => on > (until.get(`${kind}\n${farm}`) ?? ''));
  return [...standing, ...due].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.uid < b.uid ? -1 : 1));
}

/** Hanging, rounds of checks, lure changes, taking down and orders of a plan; the n-th of each keeps its uid. */
export function planEntries({ season, lines, orders }: PlannedWork): CalendarEntry[] {
  const entries: CalendarEntry[] = [];
  for (const { line, changes } of lines) {
    const { id, insect, farm, fields, traps, hang, takeDown } = line;
    const about = { farm, insects: [insect], fields, quantity: traps.count };
    if (hang.on !== null) entries.push(entry('hang', [season, id], hang.on, about));
    if (takeDown.on !== null) entries.push(entry('take-down', [season, id], takeDown.on, about));
    for (const [index, { on }] of changes.entries()) entries.push(entry('change-lure', [season, id, index + 1], on, about));
  }
  for (const [farm, own] of byFarm(lines)) {
    const days = [...new Set(own.flatMap(({ line }) => line.checkDays))].sort();
    days.forEach((on, index) => {
      const seen = own.filter(({ line }) => line.checkDays.includes(on)).map(({ line }) => line);
      const insects = [...new Set(seen.map(({ insect }) => insect))];
      const fields = [...new Set(seen.flatMap((line) => line.fields))];
      entries.push(entry('check', [season, 'farm', farm, index + 1], on, { farm, insects, fields }));
    });
  }
  for (const { insect, orderBy, lures, ordinal } of orders)
    entries.push(entry('order-lures', [season, insect, ordinal], orderBy, { insects: [insect], quantity: lures }));
  return entries;
}

/** Next checks by station, next lure changes by trap, and scouting and decisions that the advice calls for. */
export function dueEntries(prepared: Prepared): CalendarEntry[] {
  const traps = hanging(prepared, [...prepared.traps.values()]);
  const stations = new Map<string, TrapRecord[]>();
  for (const trap of traps) stations.set(trap.station, [...(stations.get(trap.station) ?? []), trap]);
  return [
    ...[...stations].map(([station, own]) => nextCheckAt(prepared, station, own)),
    ...traps.flatMap((trap) => nextLureChange(prepared, trap)),
    ...adviceEntries(prepared),
  ];
}

function nextCheckAt(prepared: Prepared, station: string, traps: readonly TrapRecord[]): CalendarEntry {
  const due = Math.min(...traps.map((trap) => checkDue(prepared, trap))) as Day;
  const seen = Math.max(...traps.map((trap) => lastSeen(prepared, trap))) as Day;
  return dated(prepared, 'check', ['station', station, formatDay(seen)], due, { station, ...aboutTraps(prepared, traps) });
}

/** At the last check in the trap's rhythm before the lure's life ends; by a visit of its own where there is none. */
function nextLureChange(prepared: Prepared, trap: TrapRecord): CalendarEntry[] {
  const lure = lureEnds(prepared, trap);
  if (lure === null) return [];
  const next = checkDue(prepared, trap);
  const rhythm = Math.max(1, next - lastSeen(prepared, trap));
  const checks = Math.floor((lure.ends - next) / rhythm);
  const on = checks < 0 ? lure.ends : addDays(next, checks * rhythm);
  const about = { station: trap.station, ...aboutTraps(prepared, [trap]), quantity: 1 };
  return [dated(prepared, 'change-lure', ['trap', trap.trapId, lure.lure.placedOn], on, about)];
}

/** One entry for a field and insect from one treatment to the next: the verb's date may move, the question is the same. */
function adviceEntries(prepared: Prepared): CalendarEntry[] {
  return adviseAll(prepared).flatMap(({ field: fieldId, insect, verb, by, dueSince }): CalendarEntry[] => {
    if ((verb !== 'decide' && verb !== 'scout') || by === null) return [];
    const field = prepared.fields.get(fieldId)!;
    const start = formatDay(growingYearStart(field, prepared.on));
    const treatments = prepared.treatmentsByCell.get(cellKey(fieldId, insect)) ?? [];
    const since = treatments.findLast(({ appliedOn }) => appliedOn > start)?.appliedOn ?? start;
    const about = { farm: field.farm, insects: [insect], fields: [fieldId] };
    return [dated(prepared, verb, [fieldId, insect, since], day(dueSince ?? by), about)];
  });
}

const lastSeen = (prepared: Prepared, trap: TrapRecord): Day =>
  historyOf(prepared, trap).intervals.at(-1)?.to ?? day(trap.hungOn);

function aboutTraps(prepared: Prepared, traps: readonly TrapRecord[]): About {
  const fields = [...new Set(traps.flatMap(({ informs }) => informs))];
  const farm = fields.map((id) => prepared.fields.get(id)?.farm).find((name) => name !== undefined) ?? null;
  return { farm, insects: [...new Set(traps.map(({ insect }) => insect))], fields, trapIds: traps.map(({ trapId }) => trapId) };
}

type About = Partial<Pick<CalendarEntry, 'farm' | 'station' | 'insects' | 'fields' | 'trapIds' | 'quantity'>>;

function entry(kind: CalendarKind, subject: readonly (string | number)[], on: IsoDay, about: About): CalendarEntry {
  const uid = [kind, ...subject.map((part) => encodePart(String(part)))].join('.');
  const nothing = { farm: null, station: null, insects: [], fields: [], trapIds: [], quantity: null };
  return { uid, kind, on, overdue: false, ...nothing, ...about };
}

function dated(prepared: Prepared, kind: CalendarKind, subject: readonly string[], due: Day, about: About): CalendarEntry {
  const overdue = due < prepared.on;
  return { ...entry(kind, subject, formatDay(overdue ? prepared.on : due), about), overdue };
}

/** Parts are joined by dots, so a dot within one is written out too; so are the marks that a URI may hold bare. */
const encodePart = (text: string): string =>
  encodeURIComponent(text).replace(/[.!~*'()]/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);

function byFarm(lines: readonly LineLures[]): Map<string, LineLures[]> {
  const farms = new Map<string, LineLures[]>();
  for (const line of lines) farms.set(line.line.farm, [...(farms.get(line.line.farm) ?? []), line]);
  return farms;
}
