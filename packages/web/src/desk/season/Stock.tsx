import type { SeasonView, StockRecord } from '@duskwatch/core';
import { useState } from 'react';
import { shortDate } from '../../format/day.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { Editor } from '../../shared/record/Editor.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { insectName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { seasonWords } from '../../text/season.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Scroll } from './Scroll.tsx';
import { useHeld } from './useDecide.ts';

/** Packages of lures: what is left, what the plan takes, and what it cannot count on. */
export function Stock({ view }: { view: SeasonView }) {
  const w = seasonWords.lures;
  const mayWrite = useMayWrite();
  const [adding, add] = useState<StockRecord['item'] | null>(null);
  const { stock } = view.lures;
  return (
    <section aria-labelledby="stock">
      <h2 id="stock">{w.stock}</h2>
      <p className="key">{w.stockLead}</p>
      {stock.length === 0 ? (
        <p className="absent">{w.noStock}</p>
      ) : (
        <Scroll label={w.stock}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">{w.package}</th>
                <th scope="col">{w.insect}</th>
                <th scope="col" className="number">
                  {w.onHand}
                </th>
                <th scope="col">{w.opened}</th>
                <th scope="col">{w.until}</th>
                <th scope="col" className="number">
                  {w.taken}
                </th>
                <th scope="col">{w.kept}</th>
                <th scope="col" className="no-print">
                  <span className="unseen">{seasonWords.change}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {stock.map((row) => (
                <tr key={row.record.stockId}>
                  <th scope="row">
                    {row.record.stockId}
                    {row.takenSince > 0 && <small>{w.counted(row.record.onHand, shortDate(row.record.countedOn))}</small>}
                  </th>
                  <td>{insectName(row.insect)}</td>
                  <td className="number">{row.lures}</td>
                  <td>{row.record.openedOn ? shortDate(row.record.openedOn) : w.closed}</td>
                  <td>
                    {row.expiresOn ? `${shortDate(row.expiresOn)} ${row.expiresOn.slice(0, 4)}` : w.noDate}
                    {row.expired && <small className="is-due">{w.expired}</small>}
                  </td>
                  <td className="number">
                    {row.used}
                    {row.why && !row.expired && <small>{w.whyLeft[row.why]}</small>}
                  </td>
                  <td>{row.record.storage}</td>
                  <td className="no-print">
                    <HistoryButton kind="stock" recordKey={row.record.stockId} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {mayWrite('stock') && (
        <p className="actions no-print">
          <button type="button" className="button" aria-haspopup="dialog" onClick={() => add('lure')}>
            {w.addLures}
          </button>
          <button type="button" className="button" aria-haspopup="dialog" onClick={() => add('trap')}>
            {w.addTraps}
          </button>
        </p>
      )}
      {adding && <AddStock item={adding} on={view.today} close={() => add(null)} />}
    </section>
  );
}

function AddStock({ item, on, close }: { item: StockRecord['item']; on: string; close: () => void }) {
  const taken = useHeld('stock');
  const kept: Partial<StockRecord> = item === 'lure' ? { item, wornOut: null } : { item, openedOn: null, expiresOn: null };
  return (
    <Panel title={recordWords.titles.add.stock} close={close}>
      <Editor kind="stock" start={{ ...kept, countedOn: on }} kept={kept} held={null} taken={taken} close={close} />
    </Panel>
  );
}
