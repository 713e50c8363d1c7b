/** The week on paper: why each thing is due, and the drives of the seven days with the lures to take on each. */

import { adviseCell } from '../advice/decide.ts';
import { checkDue, checkRhythm, hanging, lureEnds } from '../advice/due.ts';
import type { Prepared } from '../advice/prepare.ts';
import { addDays, type Day, daysBetween, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { TrapRecord } from '../records/schema.ts';
import { lookIn, scoutingView } from './scouting.ts';
import type { ScoutingView } from './scouting-schema.ts';
import { dueFieldsOf, inRoundOrder, passedBy } from './week.ts';
import type { DueField } from './week-schema.ts';
import type { SheetLure, SheetStop, WeekSheetView } from './week-sheet-schema.ts';

const AHEAD_DAYS = 6;

export function weekSheetView(prepared: Prepared): WeekSheetView {
  const { name, invented } = prepared.program.settings;
  const until = addDays(prepared.on, AHEAD_DAYS);
  const traps = hanging(prepared, [...prepared.traps.values()]);
  const visits = new Map(traps.map((trap) => [trap.trapId, visitsOf(prepared, trap, until)]));
  const due = traps.filter(({ trapId }) => visits.get(trapId)!.length > 0);
  const scouting = scoutingView(prepared);
  const { decide, scout } = dueFieldsOf(prepared);
  const named = ({ fieldId, name: fieldName, farm, insect }: DueField) => ({
    fieldId,
    name: fieldName,
    farm,
    advice: adviseCell(prepared, fieldId, insect),
  });
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    until: formatDay(until),
    decisions: decide.map(named),
    scouting: scout.map((each) => ({ ...named(each), ...sampleOf(scouting, each) })),
    stops: stopsOf(prepared, inRoundOrder(traps, due), visits),
    lures: luresOf(prepared, traps, visits),
  };
}

/** The days of its next visits up to `until`, at the rhythm it has been visited in; one that is late comes at once. */
function visitsOf(prepared: Prepared, trap: TrapRecord, until: Day): Day[] {
  const rhythm = checkRhythm(prepared, trap);
  const visits: Day[] = [];
  for (let next = Math.max(checkDue(prepared, trap), prepared.on) as Day; next <= until; next = addDays(next, rhythm))
    visits.push(next);
  return visits;
}

function stopsOf(prepared: Prepared, traps: readonly TrapRecord[], visits: ReadonlyMap<string, readonly Day[]>): SheetStop[] {
  const stations = groupBy(traps, ({ station }) => station);
  return [...stations].map(([station, own]) => {
    const days = [...new Set(own.flatMap(({ trapId }) => visits.get(trapId)!))].sort((a, b) => a - b);
    return {
      station,
      traps: own.map(({ trapId, insect }) => ({ trapId, insect })),
      visits: days.map(formatDay),
      daysLate: Math.max(0, ...own.map((trap) => daysBetween(checkDue(prepared, trap), prepared.on))),
      skipped: own.map((trap) => passedBy(prepared, trap)).find((skip) => skip !== null) ?? null,
    };
  });
}

/** A lure goes along on the last drive before it ends, or on the first one there is once it has ended. */
function luresOf(prepared: Prepared, traps: readonly TrapRecord[], visits: ReadonlyMap<string, readonly Day[]>): SheetLure[] {
  const changes = traps.flatMap((trap) => {
    const lure = lureEnds(prepared, trap);
    const drives = visits.get(trap.trapId)!;
    const [first] = drives;
    if (!lure || first === undefined) return [];
    const after = addDays(drives.at(-1)!, checkRhythm(prepared, trap));
    if (lure.ends >= after) return [];
    const on = drives.findLast((each) => each <= lure.ends) ?? first;
    return [{ insect: trap.insect, trapId: trap.trapId, on, daysPast: Math.max(0, daysBetween(lure.ends, on)) }];
  });
  const insects = groupBy(changes, ({ insect }) => insect);
  return prepared.insects
    .filter((insect) => insects.has(insect))
    .map((insect) => {
      const own = insects.get(insect)!.toSorted((a, b) => a.on - b.on);
      const days = groupBy(own, ({ on }) => on);
      return {
        insect,
        days: [...days].map(([on, those]) => ({ on: formatDay(on), lures: those.length })),
        traps: own.map(({ trapId, on, daysPast }) => ({ trapId, on: formatDay(on), daysPast })),
      };
    });
}

/** What to look for and at how many, as the plan that speaks for the field now says it. */
function sampleOf({ fields, plans, counting, looks }: ScoutingView, { fieldId, insect }: DueField) {
  const field = fields.find((each) => each.fieldId === fieldId);
  const ruleId = field?.pairs.find((pair) => pair.insect === insect)?.rules[0]?.ruleId;
  const plan = plans.find((each) => each.ruleId === ruleId);
  const count = counting.find((each) => each.insect === insect);
  const unit = plan?.unit ?? count?.unit ?? 'plants';
  return {
    look: (field && lookIn(looks, insect, field.crop, unit)?.text) ?? null,
    units: plan?.maxSamples ?? count?.units ?? null,
    unit,
  };
}
