import type { SheetQuestion } from '@duskwatch/core';
import { useId } from 'react';
import { sheetWords, importWords as w } from '../../text/import.ts';
import { useWording } from '../../text/wording.ts';
import { Field } from '../../ui/Field.tsx';
import { answerName, isFree } from './answer-names.ts';

/** What the sheet leaves open, each with where it stands. What is likely is offered, never filled in by itself. */
export function Questions(props: {
  questions: readonly SheetQuestion[];
  answers: Readonly<Record<string, string>>;
  remembered: ReadonlySet<string>;
  answer: (id: string, answer: string) => void;
}) {
  const { questions, answers, remembered, answer } = props;
  const likely = questions.filter(({ id, suggestion }) => suggestion !== null && !answers[id]);
  const takeLikely = () => {
    for (const { id, suggestion } of likely) answer(id, suggestion!);
  };
  return (
    <>
      {likely.length > 1 && (
        <button type="button" className="button" onClick={takeLikely}>
          {w.takeLikely(likely.length)}
        </button>
      )}
      <div className="import-questions">
        {questions.map((question) => (
          <OneQuestion
            key={question.id}
            question={question}
            answer={answers[question.id] ?? ''}
            isRemembered={remembered.has(question.id)}
            give={(given) => answer(question.id, given)}
          />
        ))}
      </div>
    </>
  );
}

/** They are about every count of the sheet: some of its cells tell nothing more. */
const OF_THE_WHOLE: ReadonlySet<SheetQuestion['ask']> = new Set([
  'insect',
  'design',
  'crop',
  'farm',
  'field',
  'condition',
  'hungOn',
]);

function OneQuestion(props: { question: SheetQuestion; answer: string; isRemembered: boolean; give: (answer: string) => void }) {
  const { question, answer, isRemembered, give } = props;
  const { ask, id, choices, suggestion } = question;
  const wording = useWording();
  const list = useId();
  const hint = [!OF_THE_WHOLE.has(ask) && w.where(sheetWords.evidence(question)), isRemembered && w.remembered]
    .filter(Boolean)
    .join(' · ');
  const offered = suggestion !== null && suggestion !== answer;
  return (
    <Field label={sheetWords.question(question)} hint={hint} name={id}>
      {(box) => (
        <div className="answer-line">
          {isFree(ask) ? (
            <>
              <input {...box} type="text" list={list} value={answer} onChange={(event) => give(event.currentTarget.value)} />
              <datalist id={list}>
                {choices.map((choice) => (
                  <option key={choice} value={choice}>
                    {answerName(ask, choice, wording)}
                  </option>
                ))}
              </datalist>
            </>
          ) : (
            <select {...box} className="select" value={answer} onChange={(event) => give(event.currentTarget.value)}>
              <option value="">{w.pick}</option>
              {choices.map((choice) => (
                <option key={choice} value={choice}>
                  {answerName(ask, choice, wording)}
                </option>
              ))}
            </select>
          )}
          {offered && (
            <button type="button" className="plain-button" onClick={() => give(suggestion)}>
              {w.suggested(answerName(ask, suggestion, wording))}
            </button>
          )}
        </div>
      )}
    </Field>
  );
}
