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
import { Table } from '../../ui/table/Table.tsx';
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
        <Table
          label={w.stock}
          rows={stock}
          keyOf={({ record }) => record.stockId}
          columns={[
            {
              head: w.package,
              value: ({ record }) => record.stockId,
              cell: ({ record, takenSince }) => (
                <>
                  {record.stockId}
                  {takenSince > 0 && <small>{w.counted(record.onHand, shortDate(record.countedOn))}</small>}
                </>
              ),
              names: true,
            },
            { head: w.insect, value: ({ insect }) => insectName(insect) },
            { head: w.onHand, value: ({ lures }) => lures, number: true },
            {
              head: w.opened,
              value: ({ record }) => record.openedOn,
              cell: ({ record }) => (record.openedOn ? shortDate(record.openedOn) : w.closed),
            },
            {
              head: w.until,
              value: ({ expiresOn }) => expiresOn,
              cell: ({ expiresOn, expired }) => (
                <>
                  {expiresOn ? `${shortDate(expiresOn)} ${expiresOn.slice(0, 4)}` : w.noDate}
                  {expired && <small className="is-due">{w.expired}</small>}
                </>
              ),
            },
            {
              head: w.taken,
              value: ({ used }) => used,
              cell: ({ used, why, expired }) => (
                <>
                  {used}
                  {why && !expired && <small>{w.whyLeft[why]}</small>}
                </>
              ),
              number: true,
            },
            { head: w.kept, value: ({ record }) => record.storage },
            {
              head: seasonWords.change,
              unseen: true,
              className: 'no-print',
              cell: ({ record }) => <HistoryButton kind="stock" recordKey={record.stockId} />,
            },
          ]}
        />
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
