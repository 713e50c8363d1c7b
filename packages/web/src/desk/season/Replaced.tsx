import type { SeasonBudgetView } from '@duskwatch/core';
import { useState } from 'react';
import { moneyText } from '../../format/money.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { Editor } from '../../shared/record/Editor.tsx';
import { seasonWords } from '../../text/season.ts';
import { Panel } from '../../ui/Panel.tsx';
import { totalText } from './money-in-words.ts';
import { useHeld } from './useDecide.ts';

/** What the plan costs against what it replaces is left to the user to enter. */
export function Replaced({ budget }: { budget: SeasonBudgetView }) {
  const w = seasonWords.budget;
  const [adding, add] = useState(false);
  const taken = useHeld('prices');
  const { replaces, replacedTotal, currency, total } = budget;
  const kept = { item: 'replaces' as const, currency };
  return (
    <section aria-labelledby="replaces">
      <h2 id="replaces">{w.replaces}</h2>
      <p className="key">{w.replacesLead}</p>
      {replaces.length === 0 && <p className="absent">{w.replacesNone}</p>}
      <ul className="replaced">
        {replaces.map(({ of, price, note }) => (
          <li key={of}>
            {of}: <b>{moneyText(price, currency)}</b> {note && <small>{note}</small>}{' '}
            <HistoryButton kind="prices" recordKey={`replaces|${of}`} />
          </li>
        ))}
      </ul>
      {replacedTotal !== null && <p>{w.difference(totalText(total, currency), moneyText(replacedTotal, currency))}</p>}
      <p className="actions no-print">
        <button type="button" className="button" aria-haspopup="dialog" onClick={() => add(true)}>
          {w.replacesAdd}
        </button>
      </p>
      {adding && (
        <Panel title={w.replaces} close={() => add(false)}>
          <Editor kind="prices" start={kept} kept={kept} held={null} taken={taken} close={() => add(false)} />
        </Panel>
      )}
    </section>
  );
}
