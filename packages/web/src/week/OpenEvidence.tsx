import type { Advice, InsectName, WeekField } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import { EvidencePanel } from '../advice/EvidencePanel.tsx';
import { useWording } from '../app/wording.ts';
import { words } from '../words/index.ts';
import { localName } from '../words/names.ts';
import { cellKey } from './select.ts';
import { panelId } from './WeekCell.tsx';

const openerOf = (panel: string) => document.querySelector<HTMLElement>(`[aria-controls="${CSS.escape(panel)}"]`);

/** The evidence of one cell, in place. Escape closes it and hands the focus back to the cell. */
export function OpenEvidence(props: {
  field: WeekField;
  insect: InsectName;
  advice: Advice;
  on: string | undefined;
  toggle: (key: string) => void;
}) {
  const { field, insect, advice, on } = props;
  const wording = useWording();
  const id = panelId(field.fieldId, insect.id);
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    // Only for whoever opened it just now: an address that keeps a cell open must not take the focus.
    if (document.activeElement !== null && document.activeElement === openerOf(id)) panel.current?.focus({ preventScroll: true });
  }, [id]);
  const close = () => {
    openerOf(id)?.focus();
    props.toggle(cellKey(field.fieldId, insect.id));
  };
  return (
    <section
      ref={panel}
      id={id}
      tabIndex={-1}
      className={`open-evidence verb-${advice.verb}`}
      aria-label={`${field.name}, ${localName(insect.commonName)}`}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <header>
        <h3>
          <span>
            {field.name}, {localName(insect.commonName)}
          </span>
          {wording.headline(advice)}
        </h3>
        <button type="button" className="plain-button" onClick={close}>
          {words.evidence.close}
        </button>
      </header>
      <EvidencePanel
        advice={advice}
        foot={
          <>
            {advice.verb !== 'none' && (
              <Link to="/fields/$fieldId/scouting/$insect" params={{ fieldId: field.fieldId, insect: insect.id }} search={{ on }}>
                {words.evidence.scouting}
              </Link>
            )}
            <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }} hash={insect.id}>
              {words.evidence.season}
            </Link>
          </>
        }
      />
    </section>
  );
}
