import type { CheckEvidence } from '@duskwatch/core';
import { daySpan } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { historyWords } from '../../text/history.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { Table } from '../../ui/table/Table.tsx';
import { HistoryButton } from '../history/HistoryButton.tsx';

/** The visits that a rate rests on, one to a row. */
export function CheckTable({ checks }: { checks: readonly CheckEvidence[] }) {
  const w = words.checks;
  const wording = useWording();
  const counted = (count: number | null) => (count === null ? '–' : countText(count));
  return (
    <Table
      label={w.caption}
      rows={checks}
      keyOf={({ trapId, from, to }) => `${trapId}|${from}|${to}`}
      columns={[
        { head: w.trap, value: ({ trapId }) => trapId, names: true },
        { head: w.span, value: ({ to }) => to, cell: ({ from, to }) => daySpan(from, to) },
        { head: w.nights, value: ({ nights }) => nights, number: true },
        { head: w.count, value: ({ count }) => count, cell: ({ count }) => counted(count), number: true },
        { head: w.others, value: ({ others }) => others, cell: ({ others }) => counted(others), number: true },
        { head: w.condition, value: ({ condition }) => wording.condition[condition] },
        {
          head: w.lure,
          value: ({ lureAgeDays }) => lureAgeDays,
          cell: ({ lureAgeDays, lureLifeDays }) => w.lureAge(lureAgeDays, lureLifeDays),
        },
        {
          head: historyWords.button,
          cell: ({ trapId, to, visits }) =>
            visits.map((visit) => <HistoryButton key={visit} kind="checks" recordKey={`${trapId}|${to}|${visit}`} />),
        },
      ]}
    />
  );
}
