import {
  LABEL_GRIDS,
  LANGUAGES,
  type LabelGrid,
  type LabelGridId,
  type Language,
  LEGIBILITY,
  labelGrid,
  labelsPerSheet,
} from '@duskwatch/core';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ApiError, send, sendForFile } from '../../api/client.ts';
import { useLengthUnit } from '../../browser/preferences.ts';
import { rememberedText } from '../../browser/remembered-text.ts';
import { saveFile } from '../../browser/save.ts';
import { lengthText } from '../../format/length.ts';
import { useSettings } from '../../shared/settings/useSettings.ts';
import { documentsWords as w } from '../../text/documents.ts';
import { language as pageLanguage } from '../../text/language.ts';
import { useWording } from '../../text/wording.ts';
import { Field } from '../../ui/Field.tsx';
import { LANGUAGE_NAMES } from '../../ui/LanguageChoice.tsx';
import { Panel } from '../../ui/Panel.tsx';

interface Summary {
  readonly labels: number;
  readonly sheets: number;
  readonly letterHeightMm: readonly [number, number] | null;
  readonly legibleFromM: readonly [number, number] | null;
  readonly withoutCode: readonly string[];
  readonly replacedLetters: readonly string[];
  readonly origin: string;
  readonly onlyThisMachine: boolean;
}

const MM_PER_INCH = 25.4;
const contactKept = rememberedText('duskwatch.contact');
const one = (value: number) => (Math.round(value * 10) / 10).toLocaleString(pageLanguage);

/** US sheets are sold in inches. */
function gridText({ paper, columns, rows, widthMm, heightMm }: LabelGrid): string {
  const size =
    paper === 'A4'
      ? `${one(widthMm)} × ${one(heightMm)} mm`
      : `${(widthMm / MM_PER_INCH).toFixed(2)} × ${(heightMm / MM_PER_INCH).toFixed(2)} in`;
  return w.gridName(paper, columns, rows, size);
}

/** @param trapIds those listed on the page */
export function LabelsPanel({ trapIds, close }: { trapIds: readonly string[]; close: () => void }) {
  const [length] = useLengthUnit();
  const wording = useWording();
  const [gridId, chooseGrid] = useState<LabelGridId>(length === 'ft' ? 'letter-2x5' : 'a4-3x7');
  const [startAt, chooseStart] = useState(1);
  const [all, chooseAll] = useState(false);
  const [language, chooseLanguage] = useState<Language>(pageLanguage);
  const { settings } = useSettings();
  const [typed, writeContact] = useState<string | null>(() => contactKept.read() || null);
  const contact = typed ?? settings?.contact ?? '';
  const [outlines, chooseOutlines] = useState(false);
  const [state, tell] = useState<'idle' | 'making' | 'failed'>('idle');
  const perSheet = labelsPerSheet(labelGrid(gridId));
  const request = {
    grid: gridId,
    startAt: Math.min(perSheet, Math.max(1, startAt || 1)),
    trapIds: all ? null : trapIds,
    language,
    length,
    contact,
    outlines,
  };
  const { data, error } = useQuery({
    queryKey: ['labels', request],
    queryFn: () => send<Summary>('POST', '/api/labels', request),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });

  const make = async (path: string, body: object | null, name: string) => {
    tell('making');
    contactKept.write(contact);
    try {
      saveFile(await sendForFile(path, body), `${name}.pdf`);
      tell('idle');
    } catch {
      tell('failed');
    }
  };

  return (
    <Panel title={w.title} close={close}>
      <div className="label-form">
        <Field label={w.grid} hint={w.gridNote}>
          {(box) => (
            <select {...box} value={gridId} onChange={(event) => chooseGrid(event.currentTarget.value as LabelGridId)}>
              {LABEL_GRIDS.map((grid) => (
                <option key={grid.id} value={grid.id}>
                  {gridText(grid)}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field label={w.start} hint={w.startNote(perSheet)}>
          {(box) => (
            <input
              {...box}
              type="number"
              min={1}
              max={perSheet}
              value={startAt || ''}
              onChange={(event) => chooseStart(event.currentTarget.valueAsNumber)}
            />
          )}
        </Field>
        <Field label={w.which}>
          {(box) => (
            <select {...box} value={all ? 'all' : 'listed'} onChange={(event) => chooseAll(event.currentTarget.value === 'all')}>
              <option value="listed">{w.listed(trapIds.length)}</option>
              <option value="all">{w.all}</option>
            </select>
          )}
        </Field>
        <Field label={w.language}>
          {(box) => (
            <select {...box} value={language} onChange={(event) => chooseLanguage(event.currentTarget.value as Language)}>
              {LANGUAGES.map((each) => (
                <option key={each} value={each}>
                  {LANGUAGE_NAMES[each]}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field label={w.contact} hint={w.contactNote}>
          {(box) => (
            <input
              {...box}
              type="text"
              maxLength={200}
              value={contact}
              onChange={(event) => writeContact(event.currentTarget.value)}
            />
          )}
        </Field>
        <label className="tick">
          <input type="checkbox" checked={outlines} onChange={(event) => chooseOutlines(event.currentTarget.checked)} />
          <span>{w.outlines}</span>
        </label>
        <div className="label-summary" role="status">
          {error instanceof ApiError && <p className="entries-fault">{error.problems[0]?.expected ?? w.failed}</p>}
          {data && !error && <SummaryText summary={data} length={length} standing={wording.standing[LEGIBILITY.standing]} />}
          {state === 'failed' && <p className="entries-fault">{w.failed}</p>}
        </div>
        <p className="actions">
          <button
            type="button"
            className="button primary"
            aria-disabled={state === 'making' || data?.labels === 0}
            onClick={() => state !== 'making' && data?.labels !== 0 && void make('/api/labels.pdf', request, w.file)}
          >
            {state === 'making' ? w.making : w.make}
          </button>
        </p>
        <Checklists make={(paper) => make(checklistPath(paper, language, length), null, w.checklists.file)} />
      </div>
    </Panel>
  );
}

const checklistPath = (paper: string, language: Language, length: string) =>
  `/api/checklists.pdf?${new URLSearchParams({ paper, language, length })}`;

function SummaryText({ summary, length, standing }: { summary: Summary; length: 'm' | 'ft'; standing: string }) {
  const { labels, sheets, letterHeightMm, legibleFromM, withoutCode, replacedLetters, origin, onlyThisMachine } = summary;
  if (labels === 0 || !letterHeightMm || !legibleFromM) return <p>{w.none}</p>;
  const span = ([low, high]: readonly [number, number], text: (value: number) => string) =>
    text(low) === text(high) ? text(low) : `${text(low)} – ${text(high)}`;
  return (
    <>
      <p>
        <strong>{w.count(labels, sheets)}</strong>{' '}
        {w.legible(
          span(letterHeightMm, one),
          span(legibleFromM, (m) => lengthText(m, length)),
        )}
      </p>
      <p className="key">{w.rule(LEGIBILITY.source, standing)}</p>
      {onlyThisMachine ? <p className="entries-fault">{w.onlyHere(origin)}</p> : <p className="key">{w.leads(origin)}</p>}
      {withoutCode.length > 0 && <p className="entries-fault">{w.withoutCode(withoutCode.join(', '))}</p>}
      {replacedLetters.length > 0 && <p className="entries-fault">{w.replaced(replacedLetters.join(', '))}</p>}
    </>
  );
}

function Checklists({ make }: { make: (paper: string) => Promise<void> }) {
  const [length] = useLengthUnit();
  const [paper, choose] = useState(length === 'ft' ? 'Letter' : 'A4');
  return (
    <section className="label-checklists">
      <h3>{w.checklists.title}</h3>
      <p>{w.checklists.text}</p>
      <Field label={w.checklists.paper}>
        {(box) => (
          <select {...box} value={paper} onChange={(event) => choose(event.currentTarget.value)}>
            {['A4', 'Letter'].map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        )}
      </Field>
      <p className="actions">
        <button type="button" className="button" onClick={() => void make(paper)}>
          {w.checklists.make}
        </button>
      </p>
    </section>
  );
}
