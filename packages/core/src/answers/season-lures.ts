import { checkDue, hanging, lureEnds } from '../advice/due.ts';
import { historyOf, type Prepared } from '../advice/prepare.ts';
import { addDays, day, daysBetween, formatDay } from '../base/day.ts';
import { practicesFor } from '../catalogue/index.ts';
import { lureNeeds, type PlannedSeason, priceOf, pricesFor, seasonRecord, stockNow } from '../planning/index.ts';
import type { TrapRecord } from '../records/schema.ts';
import type { LureDue, SeasonLures } from './season-schema.ts';

export function seasonLures(prepared: Prepared, work: PlannedSeason, withPrices: boolean): SeasonLures {
  const { lines, lures, season } = work;
  const reserve = seasonRecord(prepared.program, season)?.reserveShare ?? null;
  const shares = reserve === null ? {} : { spares: reserve, losses: 0 };
  const needs = lureNeeds(
    lines.flatMap(({ uses }) => uses),
    shares,
  );
  const { list } = pricesFor(prepared.program, season);
  const packages = stockNow(prepared);
  return {
    needs: needs.map((need) => ({ ...need, inAll: need.placed + need.reserve })),
    months: [...new Set(needs.flatMap(({ months }) => months.map(({ month }) => month)))].sort(),
    orders: lures.orders.map((order) => {
      const price = withPrices ? priceOf('lure', { design: null, insect: order.insect }, list) : null;
      return { ...order, cost: price && { low: price.low * order.lures, high: price.high * order.lures } };
    }),
    stock: lures.stock.map((use, index) => {
      const { record, takenSince, expired } = packages[index]!;
      return { ...use, record, takenSince, expired };
    }),
    due: hanging(prepared, [...prepared.traps.values()])
      .map((trap) => lureDue(prepared, trap))
      .sort((a, b) => (a.changeOn ?? '').localeCompare(b.changeOn ?? '')),
    unknownLines: lines.filter(({ line, uses }) => uses.length === 0 && line.caution === null).map(({ line }) => line.id),
    cautions: [...practicesFor('handling-lures'), ...practicesFor('handling-moths').filter(({ weight }) => weight === 'caution')],
  };
}

/** When the lure that hangs in a trap is to be changed: never later than its life, at a check where there is one in time. */
function lureDue(prepared: Prepared, trap: TrapRecord): LureDue {
  const { trapId, station, insect } = trap;
  const lure = lureEnds(prepared, trap);
  const placed = (prepared.luresByTrap.get(trapId) ?? []).map(({ placedOn }) => placedOn).filter((on) => day(on) <= prepared.on);
  const placedOn = placed.sort().at(-1) ?? null;
  if (lure === null) return { trapId, station, insect, placedOn, ends: null, changeOn: null, overdueDays: 0 };
  const next = checkDue(prepared, trap);
  const seen = historyOf(prepared, trap).intervals.at(-1)?.to ?? day(trap.hungOn);
  const rhythm = Math.max(1, next - seen);
  const checks = Math.floor((lure.ends - next) / rhythm);
  const changeOn = formatDay(checks < 0 ? lure.ends : addDays(next, checks * rhythm));
  const overdueDays = Math.max(0, daysBetween(lure.ends, prepared.on));
  return { trapId, station, insect, placedOn, ends: formatDay(lure.ends), changeOn, overdueDays };
}
