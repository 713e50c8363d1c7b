/** A season's plan, lures and budget as lines for people. */
import { english, type SeasonLineView, type SeasonTruthView, type SeasonView, type Total } from '@duskwatch/core';
import { alignColumns } from './columns.ts';

const words = english({ temperature: 'C' });

export function rateLines(view: SeasonView, truth: SeasonTruthView | null): string[] {
  return [
    `Season ${view.season}, ${view.from} up to ${view.to} (${view.state}): ${view.trapsInAll} traps`,
    ...planLines(view),
    '',
    ...lureLines(view),
    ...budgetLines(view),
    ...(truth === null ? [] : ['', ...truthLines(truth)]),
  ];
}

function planLines({ lines }: SeasonView): string[] {
  if (lines.length === 0) return ['Nothing to plan: no field with a host of an insect that is trapped.'];
  return alignColumns([
    ['insect', 'area', 'design', 'traps', 'missed', 'in error', 'hang on', 'take down on', 'checks', 'why'],
    ...lines.map((line) => [
      words.insect(line.insect),
      `${line.farm}: ${line.fields.map(({ name }) => name).join(' + ')}`,
      line.design.design ?? 'not known',
      `${line.traps.count}`,
      line.traps.quality ? words.percent(line.traps.quality.missed) : '–',
      line.traps.quality ? words.percent(line.traps.quality.falseAlarm) : '–',
      line.hang.on ?? 'not known',
      line.takeDown.on ?? 'not known',
      `${line.checks}`,
      whyOf(line),
    ]),
  ]);
}

function whyOf({ design, traps, hang, caution }: SeasonLineView): string {
  if (caution) return 'the crop is harvested before the flight';
  const hanging =
    hang.basis === 'heat'
      ? `${hang.leadDays} days before ${hang.spread.plausible}, the earliest plausible flight`
      : hang.basis === 'chosen'
        ? `day chosen; heat proposes ${hang.proposed}`
        : `${hang.basis} (${hang.why})`;
  return `design: ${design.why}; number: ${traps.why}; ${hanging}`;
}

function lureLines({ lures, budget }: SeasonView): string[] {
  const { needs, months, orders, unknownLines } = lures;
  if (needs.length === 0) return [];
  return [
    'Lures needed',
    ...alignColumns([
      ['insect', ...months, 'reserve', 'in all'],
      ...needs.map((need) => [
        words.insect(need.insect),
        ...months.map((month) => `${need.months.find((each) => each.month === month)?.lures ?? 0}`),
        `${need.reserve}`,
        `${need.inAll}`,
      ]),
    ]),
    ...(unknownLines.length > 0 ? [`Not counted, for want of a day to hang or take down: ${unknownLines.length} lines`] : []),
    '',
    'To order',
    ...(orders.length === 0 ? ['nothing'] : []),
    ...alignColumns(
      orders.map((order) => [
        `by ${order.orderBy}${order.late ? ' (late)' : ''}`,
        `${order.lures} of ${words.insect(order.insect)}`,
        `first needed ${order.neededOn}`,
        order.cost && budget ? money({ ...order.cost, atLeast: false }, budget.currency) : 'price unknown',
      ]),
    ),
    '',
  ];
}

function budgetLines({ budget }: SeasonView): string[] {
  if (budget === null) return [];
  const { currency, rows, total, missing } = budget;
  return [
    `Budget: ${money(total, currency)}`,
    ...alignColumns(
      rows.map((row) => [
        row.of ? `${row.kind}, ${row.of}` : row.kind,
        row.quantity === null ? 'unknown' : `${Math.round(row.quantity)}`,
        row.price ? `at ${money({ ...row.price, atLeast: false }, currency)}` : 'price unknown',
        row.low === null || row.high === null ? '' : money({ low: row.low, high: row.high, atLeast: false }, currency),
        row.price && row.price.standing !== 'user' ? words.standing[row.price.standing] : '',
      ]),
    ),
    ...(missing.length > 0
      ? [`Not in the sum: ${missing.map(({ kind, of, why }) => `${why} of ${[kind, of].filter(Boolean).join(', ')}`).join('; ')}`]
      : []),
  ];
}

function money({ low, high, atLeast }: Total, currency: string): string {
  const [from, to] = [low.toFixed(2), high.toFixed(2)];
  return `${atLeast ? 'at least ' : ''}${from}${!atLeast && from !== to ? `–${to}` : ''} ${currency}`;
}

function truthLines({ today, lines }: SeasonTruthView): string[] {
  const off = lines.filter(({ deviations }) => deviations.length > 0);
  return [
    `Plan against season, up to ${today}: ${lines.length - off.length} of ${lines.length} lines as planned`,
    ...alignColumns(
      off.map(({ insect, fields, deviations, effects }) => [
        words.insect(insect),
        fields.map(({ name }) => name).join(' + '),
        deviations.map((one) => ('trapId' in one ? `${one.kind} ${one.trapId}` : one.kind)).join(', '),
        effects.length === 0 ? '' : `→ ${effects.map(({ kind }) => kind).join(', ')}`,
      ]),
    ),
  ];
}
