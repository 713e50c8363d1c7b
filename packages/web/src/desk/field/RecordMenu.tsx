import type { FieldInsectView, FieldView } from '@duskwatch/core';
import { useEffect, useRef, useState } from 'react';
import { HistoryPanel } from '../../shared/history/HistoryPanel.tsx';
import { AnswerPanel } from '../../shared/record/AnswerPanel.tsx';
import { useDesk } from '../../shared/record/desk.ts';
import type { Recorded } from '../../shared/record/kinds.ts';
import { Recording } from '../../shared/record/Recording.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { flightsWords } from '../../text/flights.ts';
import { recordWords } from '../../text/record.ts';
import { Menu, type MenuItem } from '../../ui/Menu.tsx';

type Open = Recorded | 'answer' | 'field';

/** All that can be written down of a field, behind one button; what is due first. */
export function RecordMenu(props: {
  view: FieldView;
  /** The insect in sight: a form begins with it. */
  insect: FieldInsectView | null;
  /** Opens somebody's own weather forecast, or the normals of its source; null where there is no source they can be for. */
  typeWeather: ((what: 'forecast' | 'normals') => void) | null;
  /** That form is open. */
  typing: boolean;
}) {
  const { view, insect, typeWeather, typing } = props;
  const w = recordWords.record;
  const [open, setOpen] = useState<Open | null>(null);
  const mayWrite = useMayWrite();
  const menu = useRef<HTMLDivElement>(null);
  const close = () => setOpen(null);
  const sheet = open !== null || typing;
  const stood = useRef(sheet);
  // The item it was opened from is gone: the focus goes back to the button of its menu, once the sheet has closed.
  useEffect(() => {
    if (stood.current && !sheet) menu.current?.querySelector<HTMLElement>('.menu-button')?.focus();
    stood.current = sheet;
  }, [sheet]);
  const waits = useDesk().entries.filter(({ state, revision }) => {
    const { value } = revision;
    return state === 'pending' && value !== null && 'fieldId' in value && value.fieldId === view.field.fieldId;
  }).length;
  const labels = { treatments: w.treatment, samples: w.sample, stages: w.stage, decisions: w.decision };
  const verb = insect?.advice.verb;
  const due = verb === 'decide' || verb === 'scout' ? verb : null;
  const items: MenuItem[] = [
    ...(due ? [{ text: fieldPageWords.record.answer, act: () => setOpen('answer') }] : []),
    ...(Object.keys(labels) as Recorded[]).filter(mayWrite).map((kind) => ({ text: labels[kind], act: () => setOpen(kind) })),
    ...(typeWeather && mayWrite('weather')
      ? [
          { text: flightsWords.forecast.enter, act: () => typeWeather('forecast') },
          { text: flightsWords.normals.enter, act: () => typeWeather('normals') },
        ]
      : []),
    { text: mayWrite('fields') ? fieldPageWords.record.field : w.fieldHistory, act: () => setOpen('field') },
  ];
  return (
    <div className="field-records no-print" ref={menu}>
      {waits > 0 && <span className="not-sent">{recordWords.unsent(waits)}</span>}
      <Menu text={fieldPageWords.record.menu} items={items} className="button primary" />
      {open === 'answer' && due && insect && (
        <AnswerPanel asked={{ field: view.field, insect: insect.insect.id, verb: due, on: view.on }} close={close} />
      )}
      {open === 'field' && <HistoryPanel kind="fields" recordKey={view.field.fieldId} close={close} />}
      {open !== null && open !== 'answer' && open !== 'field' && (
        <Recording
          kind={open}
          field={view.field}
          on={view.on}
          lead={insect && { insect: insect.insect.id, verb: insect.advice.verb }}
          close={close}
        />
      )}
    </div>
  );
}
