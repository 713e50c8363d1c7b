import type { IsoDay, RecordQuestion } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { dayTextFrom } from '../../format/day.ts';
import { countText, rateText } from '../../format/number.ts';
import { Editor } from '../../shared/record/Editor.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { questionsWords as w } from '../../text/questions.ts';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';
import { type Column, Table } from '../../ui/table/Table.tsx';

/** The checks a question is about; each opens in its own form, as it is corrected anywhere. */
export function EvidenceTable({ question, on }: { question: RecordQuestion; on: IsoDay }) {
  const { data: checks } = useQuery(recordsQuery('checks'));
  const mayCorrect = useMayWrite()('checks');
  const [open, setOpen] = useState<string | null>(null);
  const held = checks?.find(({ value }) => `${value.trapId}|${value.checkedOn}` === open);
  const shown = question.checks.slice(-MOST_SHOWN);
  const correcting: Column<(typeof shown)[number]> = {
    head: w.columns.act,
    cell: ({ trapId, checkedOn }) => (
      <button
        type="button"
        className="row-button"
        aria-haspopup="dialog"
        aria-label={w.correctLabel(trapId, dayTextFrom(checkedOn, on))}
        onClick={() => setOpen(`${trapId}|${checkedOn}`)}
      >
        {w.correct}
      </button>
    ),
  };
  return (
    <>
      <Table
        label={`${w.evidence}: ${w.kinds[question.kind]}`}
        height="part"
        rows={shown}
        keyOf={({ trapId, checkedOn }) => `${trapId}|${checkedOn}`}
        columns={[
          {
            head: w.columns.trap,
            value: ({ trapId }) => trapId,
            cell: ({ trapId }) => (
              <Link to="/traps/$trapId" params={{ trapId }}>
                {trapId}
              </Link>
            ),
            names: true,
          },
          { head: w.columns.day, value: ({ checkedOn }) => checkedOn, cell: ({ checkedOn }) => dayTextFrom(checkedOn, on) },
          { head: w.columns.count, value: ({ count }) => count, cell: ({ count }) => countText(count), number: true },
          {
            head: w.columns.expected,
            value: ({ expected }) => expected,
            cell: ({ expected }) => (expected === null ? w.unknown : rateText(expected)),
            number: true,
          },
          {
            head: w.columns.others,
            value: ({ others }) => others,
            cell: ({ others }) => (others === null ? w.unknown : countText(others)),
            number: true,
          },
          {
            head: w.columns.neighbours,
            said: ({ neighbours }) =>
              neighbours.length === 0
                ? w.noNeighbours
                : neighbours.map(({ trapId, count, nights }) => w.neighbour(trapId, countText(count), nights)).join('; '),
            className: 'neighbours',
          },
          ...(mayCorrect ? [correcting] : []),
        ]}
      />
      {open !== null && held && (
        <Panel title={recordWords.titles.edit.checks} close={() => setOpen(null)}>
          <Editor
            kind="checks"
            start={held.value}
            kept={{ trapId: held.value.trapId, visit: held.value.visit, photo: held.value.photo ?? null }}
            held={{ base: { revisionId: held.revisionId, recordId: held.recordId }, value: held.value }}
            close={() => setOpen(null)}
          />
        </Panel>
      )}
    </>
  );
}

/** A season of rounded counts fills no page. */
const MOST_SHOWN = 60;
