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

/** The checks a question is about; each opens in its own form, as it is corrected anywhere. */
export function EvidenceTable({ question, on }: { question: RecordQuestion; on: IsoDay }) {
  const { data: checks } = useQuery(recordsQuery('checks'));
  const mayCorrect = useMayWrite()('checks');
  const [open, setOpen] = useState<string | null>(null);
  const held = checks?.find(({ value }) => `${value.trapId}|${value.checkedOn}` === open);
  const shown = question.checks.slice(-MOST_SHOWN);
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={`${w.evidence}: ${w.kinds[question.kind]}`} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{w.columns.trap}</th>
              <th scope="col">{w.columns.day}</th>
              <th scope="col" className="number">
                {w.columns.count}
              </th>
              <th scope="col" className="number">
                {w.columns.expected}
              </th>
              <th scope="col" className="number">
                {w.columns.others}
              </th>
              {mayCorrect && <th scope="col">{w.columns.act}</th>}
            </tr>
          </thead>
          <tbody>
            {shown.map(({ trapId, checkedOn, count, others, expected }) => (
              <tr key={`${trapId}|${checkedOn}`}>
                <th scope="row">
                  <Link to="/traps/$trapId" params={{ trapId }}>
                    {trapId}
                  </Link>
                </th>
                <td>{dayTextFrom(checkedOn, on)}</td>
                <td className="number">{countText(count)}</td>
                <td className="number">{expected === null ? w.unknown : rateText(expected)}</td>
                <td className="number">{others === null ? w.unknown : countText(others)}</td>
                {mayCorrect && (
                  <td>
                    <button
                      type="button"
                      className="row-button"
                      aria-haspopup="dialog"
                      aria-label={w.correctLabel(trapId, dayTextFrom(checkedOn, on))}
                      onClick={() => setOpen(`${trapId}|${checkedOn}`)}
                    >
                      {w.correct}
                    </button>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
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
