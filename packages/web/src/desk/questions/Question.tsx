import { type AnswerRecord, type AskedQuestion, type IsoDay, questionInWords } from '@duskwatch/core';
import { useId } from 'react';
import { dayText, dayTextFrom } from '../../format/day.ts';
import type { StoredVersion } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { language } from '../../text/language.ts';
import { questionsWords as w } from '../../text/questions.ts';
import { Folded } from '../../ui/Folded.tsx';
import { EvidenceTable } from './EvidenceTable.tsx';

type Kept = StoredVersion<'answers'> & { readonly value: AnswerRecord };

/** One question: what is odd, how odd, the checks behind it, and the answers there are. */
export function Question({ asked, on, said }: { asked: AskedQuestion; on: IsoDay; said: Kept | undefined }) {
  const { key, question, answer } = asked;
  const titleId = useId();
  const say = useWriteRecords();
  const mayAnswer = useMayWrite()('answers');
  const base = said ? { revisionId: said.revisionId, recordId: said.recordId } : null;
  const write = (text: string, value: AnswerRecord | null) =>
    say(text, { kind: 'answers', value, base, before: said?.value ?? null });
  const give = (chosen: 'right' | 'later') =>
    write(w.said[chosen], { question: key, answer: chosen, answeredOn: on, note: null });
  return (
    <li>
      <article className="question" aria-labelledby={titleId}>
        <h2 id={titleId}>{w.kinds[question.kind]}</h2>
        <p>{questionInWords(question, language, (each) => dayTextFrom(each, on))}</p>
        {answer && (
          <p className="answered">{w.answered[answer.answer](said?.authorName ?? w.somebody, dayText(answer.answeredOn))}</p>
        )}
        <Folded title={w.evidence}>
          <EvidenceTable question={question} on={on} />
        </Folded>
        {mayAnswer && (
          <div className="actions">
            {answer === null ? (
              <>
                <button type="button" className="button" onClick={() => void give('right')}>
                  {w.right}
                </button>
                <button type="button" className="plain-button" onClick={() => void give('later')}>
                  {w.later}
                </button>
              </>
            ) : (
              base && (
                <button type="button" className="plain-button" onClick={() => void write(w.takenBack, null)}>
                  {w.takeBack}
                </button>
              )
            )}
          </div>
        )}
      </article>
    </li>
  );
}
