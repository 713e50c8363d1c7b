/** The numbers behind each chart, for whoever reads tables better than lines. */
import { degreeDaysFrom, type FieldInsectView, type HeatStrip } from '@duskwatch/core';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { shortDate, shortDay } from '../../format/day.ts';
import { countText, intervalText, rateText } from '../../format/number.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { historyWords } from '../../text/history.ts';
import { words } from '../../text/index.ts';
import { localName, sampleKind } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';

const newestFirst = <T,>(values: readonly T[]) => [...values].reverse();
const nameOf = ({ insect }: FieldInsectView) => localName(insect.commonName);

export function RateTable({ insect }: { insect: FieldInsectView }) {
  const wording = useWording();
  const w = words.field.tables;
  const rows = insect.lines.flatMap(({ design, points }) => newestFirst(points).map((point) => ({ ...point, design })));
  if (rows.length === 0) return null;
  return (
    <FoldedTable
      title={w.rates}
      of={nameOf(insect)}
      rows={rows}
      keyOf={({ design, from }) => `${design}|${from}`}
      columns={[
        { head: w.from, value: ({ from }) => from, cell: ({ from }) => shortDay(from) },
        { head: w.to, value: ({ to }) => to, cell: ({ to }) => shortDay(to) },
        {
          head: w.rate,
          value: ({ perNight }) => perNight,
          cell: ({ perNight }) => (perNight === null ? w.noTrap : rateText(perNight)),
          number: true,
        },
        {
          head: w.interval,
          value: ({ low, high }) => (low === null || high === null ? null : intervalText(low, high)),
          cell: ({ low, high }) => (low === null || high === null ? '–' : intervalText(low, high)),
          number: true,
        },
        { head: w.design, value: ({ design }) => wording.design[design] },
      ]}
    />
  );
}

export function EarlierTable({ insect }: { insect: FieldInsectView }) {
  const wording = useWording();
  const w = words.field.tables;
  const rows = insect.earlierSeasons.flatMap(({ points, ...season }) =>
    newestFirst(points).map((point) => ({ ...season, ...point })),
  );
  if (rows.length === 0) return null;
  return (
    <FoldedTable
      title={w.earlier}
      of={nameOf(insect)}
      rows={rows}
      keyOf={({ design, from }) => `${design}|${from}`}
      columns={[
        { head: w.season, value: ({ year }) => year, number: true },
        { head: w.from, value: ({ from }) => from, cell: ({ from }) => shortDate(from) },
        { head: w.to, value: ({ to }) => to, cell: ({ to }) => shortDate(to) },
        {
          head: w.rate,
          value: ({ perNight }) => perNight,
          cell: ({ perNight }) => (perNight === null ? w.noTrap : rateText(perNight)),
          number: true,
        },
        { head: w.design, value: ({ design }) => wording.design[design] },
        { head: w.stations, value: ({ stations }) => stations.join(', ') },
      ]}
    />
  );
}

export function ChecksTable({ insect }: { insect: FieldInsectView }) {
  const wording = useWording();
  const w = words.checks;
  const counted = (count: number | null) => (count === null ? '–' : countText(count));
  const rows = [...insect.checks].sort((a, b) => b.on.localeCompare(a.on) || a.trapId.localeCompare(b.trapId));
  if (rows.length === 0) return null;
  return (
    <FoldedTable
      title={words.field.tables.checks(rows.length)}
      of={nameOf(insect)}
      rows={rows}
      keyOf={({ trapId, on }) => `${trapId}|${on}`}
      columns={[
        { head: w.on, value: ({ on }) => on, cell: ({ on }) => shortDay(on) },
        { head: w.trap, value: ({ trapId }) => trapId },
        { head: w.nights, value: ({ nights }) => nights, number: true },
        { head: w.count, value: ({ count }) => count, cell: ({ count }) => counted(count), number: true },
        { head: w.others, value: ({ others }) => others, cell: ({ others }) => counted(others), number: true },
        { head: w.condition, value: ({ condition }) => wording.condition[condition] },
        {
          head: w.lure,
          value: ({ lureAgeDays }) => lureAgeDays,
          cell: ({ lureAgeDays, lurePastLife }) => `${w.lureAge(lureAgeDays, null)}${lurePastLife ? `, ${w.past}` : ''}`,
        },
        { head: w.note, value: ({ note }) => note },
        {
          head: historyWords.button,
          cell: ({ trapId, on, visits }) =>
            visits.map((visit) => <HistoryButton key={visit} kind="checks" recordKey={`${trapId}|${on}|${visit}`} />),
        },
      ]}
    />
  );
}

export function HeatTable({ insect, heat }: { insect: FieldInsectView; heat: HeatStrip }) {
  const w = words.field.tables;
  const [unit] = useTemperatureUnit();
  const sumOf = ({ total }: HeatStrip['days'][number]) => total && degreeDaysFrom(total, heat.unit, unit);
  return (
    <FoldedTable
      title={`${w.heat}: ${localName(heat.modelName)}`}
      of={nameOf(insect)}
      rows={newestFirst(heat.days)}
      keyOf={({ date }) => date}
      columns={[
        { head: w.date, value: ({ date }) => date, cell: ({ date }) => shortDay(date) },
        {
          head: `${w.total}, °${unit}·d`,
          value: sumOf,
          cell: (each) => (each.total === null ? words.field.read.noHeat : countText(sumOf(each)!)),
          number: true,
        },
        { head: w.bridged, value: ({ bridged }) => (bridged ? w.yes : '') },
      ]}
    />
  );
}

interface Act {
  readonly date: string;
  readonly what: string;
  readonly detail: string;
  readonly kind: 'lures' | 'samples' | 'treatments';
  readonly key: string;
}

export function ActsTable({ fieldId, insect }: { fieldId: string; insect: FieldInsectView }) {
  const w = words.field.tables;
  const read = words.field.read;
  const acts: readonly Act[] = [
    ...insect.lures.map(({ placedOn, trapId, lifeDays }) => ({
      date: placedOn,
      what: read.lure(trapId),
      detail: w.lureLife(lifeDays),
      kind: 'lures' as const,
      key: `${trapId}|${placedOn}`,
    })),
    ...insect.samples.map(({ sampledOn, infested, examined, kind }) => ({
      date: sampledOn,
      what: read.sample(infested === null ? read.uncounted : countText(infested), examined, sampleKind(kind)),
      detail: '',
      kind: 'samples' as const,
      key: `${fieldId}|${insect.insect.id}|${sampledOn}|${kind}`,
    })),
    ...insect.treatments.map(({ appliedOn, product, protectsUntil }) => ({
      date: appliedOn,
      what: read.treatment(product),
      detail: w.until(protectsUntil && shortDay(protectsUntil)),
      kind: 'treatments' as const,
      key: `${fieldId}|${insect.insect.id}|${appliedOn}|${product}`,
    })),
  ];
  if (acts.length === 0) return null;
  return (
    <FoldedTable
      title={w.others}
      of={nameOf(insect)}
      rows={[...acts].sort((a, b) => b.date.localeCompare(a.date))}
      keyOf={({ kind, key }) => `${kind}|${key}`}
      columns={[
        { head: w.date, value: ({ date }) => date, cell: ({ date }) => shortDay(date) },
        { head: w.what, value: ({ what }) => what },
        { head: w.detail, value: ({ detail }) => detail },
        { head: historyWords.button, cell: ({ kind, key }) => <HistoryButton kind={kind} recordKey={key} /> },
      ]}
    />
  );
}
