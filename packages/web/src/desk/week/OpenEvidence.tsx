import type { InsectName, Verb, WeekField } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import { failureOf } from '../../api/client.ts';
import { adviceQuery } from '../../api/queries.ts';
import { EvidencePanel } from '../../shared/advice/EvidencePanel.tsx';
import { AnswerButton, useMayAnswer } from '../../shared/record/AnswerButton.tsx';
import { words } from '../../text/index.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { cellKey } from './select.ts';
import { panelId } from './WeekCell.tsx';

const openerOf = (panel: string) => document.querySelector<HTMLElement>(`[aria-controls="${CSS.escape(panel)}"]`);

/** The evidence of one cell, in place. Escape closes it and hands the focus back to the cell. */
export function OpenEvidence(props: {
  field: WeekField;
  insect: InsectName;
  verb: Verb;
  on: string | undefined;
  /** The day the page is read on. */
  today: string;
  toggle: (key: string) => void;
}) {
  const { field, insect, verb, on } = props;
  const { data: advice, error, refetch } = useQuery(adviceQuery(field.fieldId, insect.id, on));
  const wording = useWording();
  const mayAnswer = useMayAnswer();
  const id = panelId(field.fieldId, insect.id);
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    // Only for whoever opened it just now: an address that keeps a cell open must not take the focus.
    if (document.activeElement !== null && document.activeElement === openerOf(id)) panel.current?.focus({ preventScroll: true });
  }, [id]);
  // In sight wherever the cell is: once when it opens, and once more when it has its size.
  const arrived = advice !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: `arrived` gives it its size
  useEffect(() => {
    panel.current?.scrollIntoView({ block: 'nearest' });
  }, [arrived]);
  const close = () => {
    openerOf(id)?.focus();
    props.toggle(cellKey(field.fieldId, insect.id));
  };
  return (
    <section
      ref={panel}
      id={id}
      tabIndex={-1}
      className={`open-evidence verb-${verb}`}
      aria-label={`${field.name}, ${localName(insect.commonName)}`}
      aria-busy={!advice && !error}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <header>
        <h3>
          <span>
            {field.name}, {localName(insect.commonName)}
          </span>
          {advice ? wording.headline(advice) : wording.verb[verb]}
        </h3>
        <span className="actions">
          {on === undefined && (verb === 'decide' || verb === 'scout') && mayAnswer(verb) && (
            <AnswerButton asked={{ field, insect: insect.id, verb, on: props.today }} />
          )}
          <button type="button" className="plain-button" onClick={close}>
            {words.evidence.close}
          </button>
        </span>
      </header>
      {advice ? (
        <EvidencePanel
          advice={advice}
          foot={
            <>
              {advice.verb !== 'none' && (
                <Link
                  to="/fields/$fieldId/scouting/$insect"
                  params={{ fieldId: field.fieldId, insect: insect.id }}
                  search={{ on }}
                >
                  {words.evidence.scouting}
                </Link>
              )}
              <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }} hash={insect.id}>
                {words.evidence.season}
              </Link>
            </>
          }
        />
      ) : error ? (
        <NotHere error={error} again={refetch} />
      ) : (
        <div className="skeleton skeleton-evidence" aria-hidden="true" />
      )}
    </section>
  );
}

function NotHere({ error, again }: { error: unknown; again: () => void }) {
  const kind = failureOf(error);
  return (
    <div role="alert">
      <p>{kind === 'unreachable' ? words.evidence.notKept : words.failure[kind].text}</p>
      <button type="button" className="button" onClick={again}>
        {words.failure.again}
      </button>
    </div>
  );
}
