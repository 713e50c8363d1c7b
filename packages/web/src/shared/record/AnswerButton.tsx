import { lazy, Suspense, useState } from 'react';
import { insectName } from '../../text/names.ts';
import { thisWeekWords as w } from '../../text/this-week.ts';
import type { Asked } from './AnswerPanel.tsx';
import { useMayWrite } from './useMayWrite.ts';

// The week must not wait for forms that few open.
const load = () => import('./AnswerPanel.tsx');
const AnswerPanel = lazy(async () => ({ default: (await load()).AnswerPanel }));

/** Ahead of the first answer, so that a phone has its form in the field. */
export const loadAnswer = () => void load().catch(() => undefined);

/** Whether whoever is signed in may answer what a verb asks. */
export function useMayAnswer(): (verb: Asked['verb']) => boolean {
  const mayWrite = useMayWrite();
  return (verb) => mayWrite('decisions') || mayWrite('treatments') || (verb === 'scout' && mayWrite('samples'));
}

/** Opens the answer to what is due. Offered only to whoever may give one. */
export function AnswerButton({ asked, className = 'button' }: { asked: Asked; className?: string }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button
        type="button"
        className={`answer-button no-print ${className}`}
        aria-haspopup="dialog"
        aria-label={w.answerTo(asked.field.name, insectName(asked.insect))}
        onClick={() => setOpen(true)}
      >
        {w.answer}
      </button>
      {open && (
        <Suspense fallback={null}>
          <AnswerPanel asked={asked} close={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  );
}
