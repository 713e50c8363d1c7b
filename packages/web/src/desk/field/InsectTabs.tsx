import { cellReason, type FieldInsectView } from '@duskwatch/core';
import { Link, useNavigate } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { fieldPageWords } from '../../text/field-page.ts';
import { localName, shortReason } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Tabs } from '../../ui/Tabs.tsx';

/** The insects of a field, each tab with its own verb, so that none hides behind another. The address says which is open. */
export function InsectTabs(props: {
  fieldId: string;
  insects: readonly FieldInsectView[];
  at: string;
  on: string | undefined;
  children: ReactNode;
}) {
  const { fieldId, insects, at, on, children } = props;
  const navigate = useNavigate();
  const wording = useWording();
  const to = (insect: string) =>
    ({ to: '/fields/$fieldId', params: { fieldId }, search: { on }, hash: insect, replace: true, resetScroll: false }) as const;
  return (
    <Tabs
      label={fieldPageWords.insects}
      at={at}
      choose={(insect) => void navigate({ ...to(insect), hashScrollIntoView: false })}
      tabs={insects.map(({ insect, advice }) => ({
        id: insect.id,
        link: (
          <Link {...to(insect.id)} hashScrollIntoView={false} className={`insect-tab verb-${advice.verb}`}>
            <VerbMark verb={advice.verb} />
            <span>
              <b>{localName(insect.commonName)}</b>
              <span className="tab-said">
                <span className="verb-word">{advice.verb === 'none' ? '—' : wording.verb[advice.verb]}</span>{' '}
                {advice.verb === 'none' ? shortReason(cellReason(advice)) : wording.when(advice)}
              </span>
            </span>
          </Link>
        ),
      }))}
    >
      {children}
    </Tabs>
  );
}
