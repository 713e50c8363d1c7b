import type { Verb, WeekView } from '@duskwatch/core';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { adviceQuery } from '../../api/queries.ts';
import { loadAnswer } from '../../shared/record/AnswerButton.tsx';
import { loadEvidence } from './LazyEvidence.tsx';

/** The verbs that send somebody out. */
const SENDS_OUT: ReadonlySet<Verb> = new Set(['decide', 'scout']);
const MOST = 60;
const QUIET_MS = 3_000;

/** Not every browser tells when it has nothing to do. */
const whenIdle = (act: () => void) => ('requestIdleCallback' in globalThis ? requestIdleCallback(act) : act());

/**
 * Asks, in a quiet moment, for the evidence of what somebody is sent out for, so that a phone which keeps answers has
 * it in the field. A page without a service worker keeps nothing, and asks only for what is opened.
 */
export function useKeptEvidence(view: WeekView | undefined, on: string | undefined): void {
  const queries = useQueryClient();
  useEffect(() => {
    if (!view) return;
    let gone = false;
    const keep = async () => {
      loadEvidence();
      loadAnswer();
      if (on !== undefined || !navigator.serviceWorker?.controller) return;
      const cells = view.fields.flatMap(({ fieldId, cells }) =>
        cells.flatMap(({ advice }, index) => (SENDS_OUT.has(advice.verb) ? [[fieldId, view.insects[index]!.id] as const] : [])),
      );
      for (const [fieldId, insect] of cells.slice(0, MOST)) {
        if (gone) return;
        await queries.fetchQuery({ ...adviceQuery(fieldId, insect, on), retry: false });
      }
    };
    // Without signal there is nothing to be had: whatever is opened then says so itself.
    const later = setTimeout(() => whenIdle(() => !gone && void keep().catch(() => undefined)), QUIET_MS);
    return () => {
      gone = true;
      clearTimeout(later);
    };
  }, [queries, view, on]);
}
