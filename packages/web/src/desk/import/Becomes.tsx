import { RECORD_KINDS } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { importWords as w } from '../../text/import.ts';
import { recordWords } from '../../text/record.ts';
import { useWording } from '../../text/wording.ts';
import { Table } from '../../ui/table/Table.tsx';
import type { Applied } from './messages.ts';

/** The records that a file becomes, before anything is kept. */
export function Becomes(props: { applied: Applied; busy: boolean; keep: () => void; back: (() => void) | null }) {
  const { applied, busy, keep, back } = props;
  const { counts } = applied;
  const { checks, weather } = applied.first;
  const wording = useWording();
  const columns = w.becomes.columns;
  const all = counts.checks === 0 ? counts.weather : counts.checks;
  return (
    <section aria-label={w.becomes.title} className="import-becomes">
      <h2>{w.becomes.title}</h2>
      <p className="import-line">
        {applied.match === null ? (
          <Kinds counts={counts} />
        ) : (
          w.becomes.records(counts.fields, counts.traps, counts.checks, counts.weather)
        )}
      </p>
      <p className="import-acts">
        <button type="button" className="button primary" disabled={busy} onClick={keep}>
          {w.becomes.keep}
        </button>
        {back && (
          <button type="button" className="button" disabled={busy} onClick={back}>
            {w.becomes.back}
          </button>
        )}
      </p>
      {weather.length > 0 && checks.length === 0 ? (
        <Table
          label={w.becomes.title}
          height="page"
          rows={weather}
          keyOf={({ sourceId, date }) => `${sourceId} ${date}`}
          columns={[
            { head: columns.source, value: ({ sourceId }) => sourceId, names: true },
            { head: columns.day, value: ({ date }) => date, said: ({ date }) => dayText(date) },
            { head: columns.low, value: ({ tminC }) => tminC, number: true },
            { head: columns.high, value: ({ tmaxC }) => tmaxC, number: true },
          ]}
        />
      ) : (
        <Table
          label={w.becomes.title}
          height="page"
          rows={checks}
          keyOf={({ trapId, checkedOn, visit }) => `${trapId} ${checkedOn} ${visit}`}
          columns={[
            { head: columns.trap, value: ({ trapId }) => trapId, names: true },
            { head: columns.day, value: ({ checkedOn }) => checkedOn, said: ({ checkedOn }) => dayText(checkedOn) },
            { head: columns.count, value: ({ targetCount }) => targetCount, number: true },
            { head: columns.condition, value: ({ condition }) => wording.condition[condition] },
            { head: columns.note, value: ({ note }) => note },
          ]}
        />
      )}
      <p className="key">{w.becomes.first(Math.max(checks.length, weather.length), all)}</p>
    </section>
  );
}

/** Of a program folder: how many records of each kind it brings. */
function Kinds({ counts }: { counts: Applied['counts'] }) {
  return RECORD_KINDS.flatMap((kind) =>
    counts[kind] === 0 ? [] : [`${recordWords.kinds[kind]}: ${countText(counts[kind])}`],
  ).join(' · ');
}
