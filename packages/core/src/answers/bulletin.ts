/**
 * What a week's bulletin is drafted from. Every figure is of several farms together, and of so many that none of them can
 * be told from it: places and counts belong to the farms.
 */
import { adviseCell } from '../advice/decide.ts';
import { eventAt, modelHeat } from '../advice/phenology.ts';
import { historyOf, type Prepared } from '../advice/prepare.ts';
import type { Advice } from '../advice/types.ts';
import { addDays, type Day, formatDay, yearOf } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS, canonicalCrop, catalogue } from '../catalogue/index.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { FieldRecord, TrapDesign } from '../records/schema.ts';
import type { BulletinInsect, BulletinView, CropWeek, ExpectedEvent, WeekCatch } from './bulletin-schema.ts';
import { yearsLater } from './earlier-seasons.ts';
import { insectName, inThisYear } from './week.ts';

/** Common practice, no source: with two, each of them could take its own figure off and read the other's. */
export const FEWEST_FARMS = 3;
const WEEK = 7;
const YEARS_BACK = 2;
/** What lies further ahead is for a later bulletin. */
const AHEAD_DAYS = 28;
/** Normal deviate of an interval of 80 %. */
const Z = 1.2816;

/** A visit that tells something, and whose fields its trap stands for. */
interface Caught extends CatchInterval {
  readonly farms: readonly string[];
}

export function bulletinView(prepared: Prepared): BulletinView {
  const { name, invented } = prepared.program.settings;
  const fields = prepared.program.fields.filter((field) => inThisYear(prepared, field));
  const drafted = prepared.insects.map((insect) => insectOf(prepared, insect, fields));
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    from: formatDay(addDays(prepared.on, 1 - WEEK)),
    next: formatDay(addDays(prepared.on, WEEK)),
    fewestFarms: FEWEST_FARMS,
    insects: drafted.flatMap(({ told }) => told ?? []),
    withheld: drafted.reduce((sum, { withheld }) => sum + withheld, 0),
  };
}

/** Null where nothing may be said of it. */
function insectOf(prepared: Prepared, insect: string, fields: readonly FieldRecord[]) {
  const caught = caughtOf(prepared, insect);
  const design = mostNights(caught.filter(({ to }) => to > addDays(prepared.on, -WEEK * 2)));
  const own = caught.filter((each) => each.design === design);
  const upTo = (end: Day) => weekCatch(own.filter(({ to }) => to > addDays(end, -WEEK) && to <= end));
  const week = upTo(prepared.on);
  const before = upTo(addDays(prepared.on, -WEEK));
  const advised = fields.map((field) => ({ field, advice: adviseCell(prepared, field.fieldId, insect) }));
  const crops = cropsOf(advised.filter(({ advice }) => advice.verb !== 'none'));
  const expected = expectedOf(prepared, insect, fields);
  const withheld = Number(own.length > 0 && week === null && spoke(own, prepared.on)) + crops.withheld;
  const asks = crops.told.some(({ decide, scout, covered }) => decide + scout + covered > 0);
  if (week === null && !asks && expected.length === 0) return { told: null, withheld };
  const told: BulletinInsect = {
    insect: insectName(insect),
    design: design ?? null,
    week,
    before,
    change: week && before ? changeOf(before, week) : null,
    earlier: Array.from({ length: YEARS_BACK }, (_, i) => yearsLater(prepared.on, -1 - i)).flatMap((end) => {
      const found = upTo(end);
      return found ? [{ year: yearOf(end), week: found }] : [];
    }),
    season: Array.from({ length: YEARS_BACK + 1 }, (_, back) => seasonOf(prepared, own, back)).filter(
      ({ points }) => points.length > 0,
    ),
    expected,
    crops: crops.told,
    sources: [
      ...new Set(
        advised.flatMap(({ field, advice }) =>
          advice.source !== null && crops.cropsTold.has(canonicalCrop(field.crop)) ? [advice.source] : [],
        ),
      ),
    ].sort(),
  };
  return { told, withheld };
}

/** Every visit to a trap for the insect that says something of its nights, with the farms it stands for. */
function caughtOf(prepared: Prepared, insect: string): Caught[] {
  return [...prepared.traps.values()]
    .filter((trap) => trap.insect === insect)
    .flatMap((trap) => {
      const farms = [...new Set(trap.informs.flatMap((id) => prepared.fields.get(id)?.farm ?? []))];
      return historyOf(prepared, trap)
        .intervals.filter(({ count, nights }) => count !== null && nights > 0)
        .map((interval) => ({ ...interval, farms }));
    });
}

function mostNights(caught: readonly Caught[]): TrapDesign | undefined {
  const nights = new Map<TrapDesign, number>();
  for (const each of caught) nights.set(each.design, (nights.get(each.design) ?? 0) + each.nights);
  return [...nights].sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))[0]?.[0];
}

/** Null where fewer farms than `FEWEST_FARMS` stand behind it. */
function weekCatch(caught: readonly Caught[]): WeekCatch | null {
  const farms = new Set(caught.flatMap((each) => each.farms)).size;
  if (farms < FEWEST_FARMS) return null;
  const moths = caught.reduce((sum, { count }) => sum + count!, 0);
  const nights = caught.reduce((sum, each) => sum + each.nights, 0);
  return { moths, nights, traps: new Set(caught.map(({ trapId }) => trapId)).size, farms, perNight: moths / nights };
}

const spoke = (caught: readonly Caught[], on: Day) => caught.some(({ to }) => to > addDays(on, -WEEK) && to <= on);

/**
 * Whether the catch rose or fell: by the ratio of the two rates, each visit's count scattered with the k that is assumed
 * between visits of one trap, and the variance of its logarithm taken by the delta method.
 */
export function changeOf(before: WeekCatch, week: WeekCatch): 'more' | 'fewer' | 'unclear' {
  const k = ASSUMPTIONS.visitDispersionK.value;
  const variance = (each: WeekCatch) => 1 / (each.moths + 0.5) + 1 / (k * each.traps);
  const log = Math.log((week.moths + 0.5) / week.nights) - Math.log((before.moths + 0.5) / before.nights);
  const reach = Z * Math.sqrt(variance(before) + variance(week));
  return log > reach ? 'more' : log < -reach ? 'fewer' : 'unclear';
}

/** Week by week to the day itself, as far as enough farms stand behind each. */
function seasonOf(prepared: Prepared, own: readonly Caught[], back: number) {
  const end = yearsLater(prepared.on, -back);
  const year = yearOf(end);
  const first = own
    .filter(({ to }) => yearOf(to) === year)
    .reduce<Day | null>((min, { to }) => (min === null || to < min ? to : min), null);
  const points: { on: string; perNight: number }[] = [];
  if (first !== null)
    for (let to = end; to > addDays(first, -WEEK); to = addDays(to, -WEEK)) {
      const found = weekCatch(own.filter((each) => each.to > addDays(to, -WEEK) && each.to <= to));
      if (found) points.unshift({ on: formatDay(yearsLater(to, back)), perNight: found.perNight });
    }
  return { year, points };
}

interface Advised {
  readonly field: FieldRecord;
  readonly advice: Advice;
}

/** By crop where enough farms grow it; what is left together, where that is enough. */
function cropsOf(advised: readonly Advised[]) {
  const byCrop = [...groupBy(advised, ({ field }) => canonicalCrop(field.crop))];
  const farmsOf = (cells: readonly Advised[]) => new Set(cells.map(({ field }) => field.farm)).size;
  const enough = byCrop.filter(([, cells]) => farmsOf(cells) >= FEWEST_FARMS);
  const few = byCrop.filter(([, cells]) => farmsOf(cells) < FEWEST_FARMS);
  const rest = few.flatMap(([, cells]) => cells);
  const together = few.length > 1 && farmsOf(rest) >= FEWEST_FARMS;
  return {
    told: [
      ...enough.map(([crop, cells]) => cropWeek(crop, cells, farmsOf(cells))),
      ...(together ? [cropWeek(null, rest, farmsOf(rest))] : []),
    ].sort((a, b) => b.decide - a.decide || b.scout - a.scout || b.fields - a.fields),
    cropsTold: new Set([...enough, ...(together ? few : [])].map(([crop]) => crop)),
    withheld: together ? 0 : few.length,
  };
}

function cropWeek(crop: string | null, cells: readonly Advised[], farms: number): CropWeek {
  const said = (verb: Advice['verb']) => cells.filter(({ advice }) => advice.verb === verb);
  const pressing = [...said('decide'), ...said('scout')].flatMap(({ advice }) => advice.by ?? []).sort();
  return {
    crop,
    fields: cells.length,
    farms,
    decide: said('decide').length,
    late: said('decide').filter(({ advice }) => advice.dueSince !== null).length,
    scout: said('scout').length,
    covered: said('covered').length,
    watch: said('watch').length,
    blind: said('blind').length,
    by: pressing[0] ?? null,
  };
}

/** Events of the insect's models that come within the next weeks in fields of enough farms, soonest first. */
function expectedOf(prepared: Prepared, insect: string, fields: readonly FieldRecord[]): ExpectedEvent[] {
  const last = formatDay(addDays(prepared.on, AHEAD_DAYS));
  const hosts = new Set(catalogue.insects.find(({ id }) => id === insect)?.hosts ?? []);
  const expected: ExpectedEvent[] = [];
  for (const model of catalogue.models.filter((each) => each.insect === insect)) {
    const found = fields
      .filter((field) => hosts.has(canonicalCrop(field.crop)))
      .flatMap((field) => {
        const heat = modelHeat(prepared, field, model);
        if (heat.kind !== 'known') return [];
        return model.events.map((event) => ({ farm: field.farm, at: eventAt(heat.heat, event) }));
      })
      .filter(({ at }) => at.status === 'ahead' && at.expected !== null && at.expected.middle <= last);
    for (const group of groupBy(found, ({ at }) => `${at.event} ${at.generation} ${at.from}`).values()) {
      if (new Set(group.map(({ farm }) => farm)).size < FEWEST_FARMS) continue;
      const dates = group.map(({ at }) => at.expected!);
      const sorted = (part: 'early' | 'middle' | 'late') => dates.map((each) => each[part]).sort();
      const { event, generation } = group[0]!.at;
      expected.push({
        event,
        generation,
        fields: group.length,
        early: sorted('early')[0]!,
        middle: sorted('middle')[Math.floor((dates.length - 1) / 2)]!,
        late: sorted('late').at(-1)!,
        lateOpen: dates.some(({ lateOpen }) => lateOpen),
        standing: model.standing,
        source: model.source,
      });
    }
  }
  return expected.sort((a, b) => a.middle.localeCompare(b.middle));
}
