/** The answer to a decision or to scouting that is due: what was done, or why not. */
import type { IsoDay, RecordKind } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { insectName } from '../../text/names.ts';
import { thisWeekWords } from '../../text/this-week.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Editor, type EditorProps } from './Editor.tsx';
import { recordsQuery } from './queries.ts';
import { samplingRules } from './SamplingAside.tsx';
import { takenOf } from './taken.ts';
import { useMayWrite } from './useMayWrite.ts';

export interface Asked {
  readonly field: {
    readonly fieldId: string;
    readonly name: string;
    readonly crop?: string;
    readonly growthHabit?: string | null;
  };
  readonly insect: string;
  readonly verb: 'decide' | 'scout';
  readonly on: IsoDay;
}

const ANSWERS = { decide: ['not-treated', 'treated'], scout: ['sampled', 'not-scouted'] } as const;
type Answer = (typeof ANSWERS)[keyof typeof ANSWERS][number];
const KIND = { treated: 'treatments', 'not-treated': 'decisions', sampled: 'samples', 'not-scouted': 'decisions' } as const;

export function AnswerPanel({ asked, close }: { asked: Asked; close: () => void }) {
  const { field, insect, verb } = asked;
  const w = thisWeekWords;
  const mayWrite = useMayWrite();
  const open = ANSWERS[verb].filter((each) => mayWrite(KIND[each]));
  const [answer, choose] = useState<Answer | undefined>(open.length === 1 ? open[0] : undefined);
  return (
    <Panel title={w.answerTo(field.name, insectName(insect))} close={close}>
      <fieldset className="field answer-choice">
        <legend>{w.answers.title}</legend>
        <div className="chips">
          {open.map((each) => (
            <label key={each} className="chip">
              <input type="radio" name="answer" value={each} checked={answer === each} onChange={() => choose(each)} />
              <span>{w.answers[each]}</span>
            </label>
          ))}
        </div>
      </fieldset>
      {answer === undefined ? <p className="hint">{w.answerNote}</p> : <AnswerForm asked={asked} answer={answer} close={close} />}
    </Panel>
  );
}

function AnswerForm({ asked, answer, close }: { asked: Asked; answer: Answer; close: () => void }) {
  const { field, insect, on } = asked;
  const kept = { fieldId: field.fieldId, insect };
  const shared = { held: null, close };
  if (answer === 'treated') return <Taking kind="treatments" start={{ appliedOn: on }} kept={kept} {...shared} />;
  if (answer === 'sampled') {
    const [rule] = samplingRules({ crop: field.crop ?? '', growthHabit: field.growthHabit ?? null }, insect);
    const start = { sampledOn: on, kind: rule?.unit ?? 'plants', ...(rule ? { unitsExamined: rule.examine.units } : {}) };
    return <Taking kind="samples" start={start} kept={kept} {...shared} />;
  }
  return <Taking kind="decisions" start={{ decidedOn: on }} kept={{ ...kept, decision: answer }} {...shared} />;
}

/** A record that may be there already under its key: saving it again edits it. */
export function Taking<K extends RecordKind>(props: Omit<EditorProps<K>, 'taken'>) {
  const { data } = useQuery(recordsQuery(props.kind));
  return <Editor {...props} taken={takenOf(props.kind, data)} />;
}
