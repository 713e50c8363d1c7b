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
import { Folded } from '../../ui/Folded.tsx';

const newestFirst = <T,>(values: readonly T[]) => [...values].reverse();

export function RateTable({ insect }: { insect: FieldInsectView }) {
  const wording = useWording();
  const w = words.field.tables;
  const columns = [
    { head: w.from },
    { head: w.to },
    { head: w.rate, number: true },
    { head: w.interval, number: true },
    { head: w.design },
  ];
  const rows = insect.lines.flatMap((line) =>
    newestFirst(line.points).map((point) => [
      shortDay(point.from),
      shortDay(point.to),
      point.perNight === null ? w.noTrap : rateText(point.perNight),
      point.low === null || point.high === null ? '–' : intervalText(point.low, point.high),
      wording.design[line.design],
    ]),
  );
  return rows.length === 0 ? null : (
    <Folded of={localName(insect.insect.commonName)} title={w.rates} columns={columns} rows={rows} />
  );
}

export function EarlierTable({ insect }: { insect: FieldInsectView }) {
  const wording = useWording();
  const w = words.field.tables;
  const columns = [
    { head: w.season, number: true },
    { head: w.from },
    { head: w.to },
    { head: w.rate, number: true },
    { head: w.design },
    { head: w.stations },
  ];
  const rows = insect.earlierSeasons.flatMap(({ year, design, stations, points }) =>
    newestFirst(points).map((point) => [
      year,
      shortDate(point.from),
      shortDate(point.to),
      point.perNight === null ? w.noTrap : rateText(point.perNight),
      wording.design[design],
      stations.join(', '),
    ]),
  );
  return rows.length === 0 ? null : (
    <Folded of={localName(insect.insect.commonName)} title={w.earlier} columns={columns} rows={rows} />
  );
}

export function ChecksTable({ insect }: { insect: FieldInsectView }) {
  const wording = useWording();
  const w = words.checks;
  const columns = [
    { head: w.on },
    { head: w.trap },
    { head: w.nights, number: true },
    { head: w.count, number: true },
    { head: w.others, number: true },
    { head: w.condition },
    { head: w.lure },
    { head: w.note },
    { head: historyWords.button },
  ];
  const sorted = [...insect.checks].sort((a, b) => b.on.localeCompare(a.on) || a.trapId.localeCompare(b.trapId));
  const rows = sorted.map((check) => [
    shortDay(check.on),
    check.trapId,
    check.nights,
    check.count === null ? '–' : countText(check.count),
    check.others === null ? '–' : countText(check.others),
    wording.condition[check.condition],
    `${w.lureAge(check.lureAgeDays, null)}${check.lurePastLife ? `, ${w.past}` : ''}`,
    check.note,
    check.visits.map((visit) => <HistoryButton key={visit} kind="checks" recordKey={`${check.trapId}|${check.on}|${visit}`} />),
  ]);
  return rows.length === 0 ? null : (
    <Folded
      of={localName(insect.insect.commonName)}
      title={words.field.tables.checks(rows.length)}
      columns={columns}
      rows={rows}
    />
  );
}

export function HeatTable({ insect, heat }: { insect: FieldInsectView; heat: HeatStrip }) {
  const w = words.field.tables;
  const [unit] = useTemperatureUnit();
  const columns = [{ head: w.date }, { head: `${w.total}, °${unit}·d`, number: true }, { head: w.bridged }];
  const rows = newestFirst(heat.days).map((each) => [
    shortDay(each.date),
    each.total === null ? words.field.read.noHeat : countText(degreeDaysFrom(each.total, heat.unit, unit)),
    each.bridged ? w.yes : '',
  ]);
  return (
    <Folded
      of={localName(insect.insect.commonName)}
      title={`${w.heat}: ${localName(heat.modelName)}`}
      columns={columns}
      rows={rows}
    />
  );
}

export function ActsTable({ fieldId, insect }: { fieldId: string; insect: FieldInsectView }) {
  const w = words.field.tables;
  const read = words.field.read;
  const acts = [
    ...insect.lures.map(
      (lure) =>
        [lure.placedOn, read.lure(lure.trapId), w.lureLife(lure.lifeDays), 'lures', `${lure.trapId}|${lure.placedOn}`] as const,
    ),
    ...insect.samples.map((each) => {
      const infested = each.infested === null ? read.uncounted : countText(each.infested);
      const key = `${fieldId}|${insect.insect.id}|${each.sampledOn}|${each.kind}`;
      return [each.sampledOn, read.sample(infested, each.examined, sampleKind(each.kind)), '', 'samples', key] as const;
    }),
    ...insect.treatments.map((each) => {
      const until = each.protectsUntil && shortDay(each.protectsUntil);
      const key = `${fieldId}|${insect.insect.id}|${each.appliedOn}|${each.product}`;
      return [each.appliedOn, read.treatment(each.product), w.until(until), 'treatments', key] as const;
    }),
  ];
  const rows = acts
    .sort((a, b) => b[0].localeCompare(a[0]))
    .map(([date, what, detail, kind, key]) => [
      shortDay(date),
      what,
      detail,
      <HistoryButton key="history" kind={kind} recordKey={key} />,
    ]);
  const columns = [{ head: w.date }, { head: w.what }, { head: w.detail }, { head: historyWords.button }];
  return rows.length === 0 ? null : (
    <Folded of={localName(insect.insect.commonName)} title={w.others} columns={columns} rows={rows} />
  );
}
