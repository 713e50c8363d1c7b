import type { DECISIONS, DecisionReason, DecisionRecord, IsoDay } from '@duskwatch/core';
import { useId, useState } from 'react';
import { walkWords } from '../../text/walk.ts';
import { wordingIn } from '../../text/wording.ts';
import type { RoundDevice } from '../shared/device.ts';
import { capital } from '../shared/figures.ts';
import { Sheet } from '../shared/Sheet.tsx';

/** As they are offered: what a walk through the field tells comes first. */
const REASONS = Object.keys({
  'sample-below': 1,
  'low-for-this-farm': 1,
  'other-species': 1,
  'stage-not-at-risk': 1,
  'natural-enemies': 1,
  'harvest-near': 1,
  'label-limit': 1,
  weather: 1,
  cost: 1,
  'loss-accepted': 1,
  adviser: 1,
  other: 1,
} satisfies Record<DecisionReason, 1>) as DecisionReason[];

interface Props {
  readonly device: RoundDevice;
  readonly on: IsoDay;
  readonly fieldId: string;
  readonly insect: string;
  readonly decision: (typeof DECISIONS)[number];
  /** Reasons that what was just seen speaks against. */
  readonly without: readonly DecisionReason[];
  /** Told with how to take it back. */
  readonly said: (takeBack: () => Promise<void>) => void;
}

/** “Decided not to treat, because …”: an answer to a decision that is due, with one of the reasons that there are. */
export function DecisionSheet({ device, on, fieldId, insect, decision, without, said }: Props) {
  const w = walkWords.decision;
  const id = useId();
  const [reason, setReason] = useState<DecisionReason | null>(null);
  const [note, setNote] = useState('');
  const [lacks, setLacks] = useState<'reason' | 'note' | 'failed' | null>(null);
  const save = async () => {
    const written = note.trim();
    if (reason === null) return setLacks('reason');
    if (reason === 'other' && written === '') return setLacks('note');
    const value: DecisionRecord = { fieldId, insect, decidedOn: on, decision, reason, note: written || null };
    try {
      said(await device.say([{ kind: 'decisions', value }]));
    } catch {
      setLacks('failed');
    }
  };
  return (
    <Sheet
      name={w.button[decision]}
      buttonClass="big"
      title={w.button[decision]}
      foot={(close) => (
        <>
          <p className="problem" role="alert">
            {lacks && w.lacks[lacks]}
          </p>
          <div className="round-actions">
            <button type="button" className="big" onClick={close}>
              {w.cancel}
            </button>
            <button type="button" className="big primary" onClick={() => void save()}>
              {w.save}
            </button>
          </div>
        </>
      )}
    >
      <p className="hint">{w.adviser}</p>
      {/* biome-ignore lint/a11y/useSemanticElements: buttons, named as a group; a fieldset would draw a box. */}
      <div className="choices wrap" role="group" aria-label={w.because}>
        {REASONS.filter((each) => !without.includes(each)).map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={reason === each}
            onClick={() => {
              setLacks(null);
              setReason(each);
            }}
          >
            {capital(wordingIn('C').decisionReason[each])}
          </button>
        ))}
      </div>
      <div className="entry">
        <label htmlFor={id}>{w.note}</label>
        <textarea id={id} rows={2} maxLength={1_900} value={note} onChange={(event) => setNote(event.currentTarget.value)} />
      </div>
    </Sheet>
  );
}
