import type { FieldRecord, RecordKind, RecordOf, Verb } from '@duskwatch/core';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Taking } from './AnswerPanel.tsx';
import type { Recorded } from './kinds.ts';
import { samplingRules } from './SamplingAside.tsx';

interface Props {
  readonly kind: Recorded;
  readonly field: Pick<FieldRecord, 'fieldId' | 'crop' | 'growthHabit'>;
  /** The day it is written down for, unless the writer says another. */
  readonly on: string;
  /** What somebody is most likely here for: its insect, and the verb that sends them; null where none is known. */
  readonly lead: { readonly insect: string; readonly verb: Verb } | null;
  readonly close: () => void;
}

/** The form of one thing that happened in a field. */
export function Recording({ kind, field, on, lead, close }: Props) {
  const insect = lead?.insect ?? '';
  const [rule] = samplingRules(field, insect);
  const start: { readonly [K in Recorded]: Partial<RecordOf<K>> } = {
    stages: { observedOn: on },
    samples: { insect, sampledOn: on, kind: rule?.unit ?? 'plants', ...(rule ? { unitsExamined: rule.examine.units } : {}) },
    treatments: { insect, appliedOn: on },
    decisions: { insect, decidedOn: on, decision: lead?.verb === 'scout' ? 'not-scouted' : 'not-treated' },
  };
  return (
    <Panel title={recordWords.titles.add[kind]} close={close}>
      <Taking<RecordKind> kind={kind} start={start[kind]} kept={{ fieldId: field.fieldId }} held={null} close={close} />
    </Panel>
  );
}
