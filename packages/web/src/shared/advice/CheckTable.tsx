import type { CheckEvidence } from '@duskwatch/core';
import { daySpan } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { historyWords } from '../../text/history.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { HistoryButton } from '../history/HistoryButton.tsx';

/** The visits that a rate rests on, one to a row. */
export function CheckTable({ checks }: { checks: readonly CheckEvidence[] }) {
  const w = words.checks;
  const wording = useWording();
  return (
    <table className="figures">
      <caption className="unseen">{w.caption}</caption>
      <thead>
        <tr>
          <th scope="col">{w.trap}</th>
          <th scope="col">{w.span}</th>
          <th scope="col" className="number">
            {w.nights}
          </th>
          <th scope="col" className="number">
            {w.count}
          </th>
          <th scope="col" className="number">
            {w.others}
          </th>
          <th scope="col">{w.condition}</th>
          <th scope="col">{w.lure}</th>
          <th scope="col">{historyWords.button}</th>
        </tr>
      </thead>
      <tbody>
        {checks.map((check) => (
          <tr key={`${check.trapId}|${check.from}|${check.to}`}>
            <th scope="row">{check.trapId}</th>
            <td>{daySpan(check.from, check.to)}</td>
            <td className="number">{check.nights}</td>
            <td className="number">{check.count === null ? '–' : countText(check.count)}</td>
            <td className="number">{check.others === null ? '–' : countText(check.others)}</td>
            <td>{wording.condition[check.condition]}</td>
            <td>{w.lureAge(check.lureAgeDays, check.lureLifeDays)}</td>
            <td>
              {check.visits.map((visit) => (
                <HistoryButton key={visit} kind="checks" recordKey={`${check.trapId}|${check.to}|${visit}`} />
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
