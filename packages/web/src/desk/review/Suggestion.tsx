import { type ErrorRate, type InfestationLesson, type IsoDay, writtenThreshold } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { dayText, dayTextFrom } from '../../format/day.ts';
import { percentText, rateText } from '../../format/number.ts';
import { recordsQuery } from '../../shared/record/queries.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { reviewWords } from '../../text/review.ts';
import { Table } from '../../ui/table/Table.tsx';
import { AcceptPanel } from './AcceptPanel.tsx';
import { isLearned, type KnownInfestation, suggestionKey } from './own-rule.ts';

const w = reviewWords.crop;

const errorText = ({ wrong, of, share, low, high }: ErrorRate): string =>
  share === null ? w.noRate : w.rate(wrong, of, percentText(share), percentText(low), percentText(high));

/** The suggested threshold beside the one in force, and what a person may do about it. */
export function Suggestion(props: { lesson: InfestationLesson; learned: KnownInfestation; on: IsoDay }) {
  const { lesson, learned, on } = props;
  const { inForce } = lesson;
  const { suggestion } = learned;
  const { data: rules } = useQuery(recordsQuery('rules'));
  const { data: answers } = useQuery(recordsQuery('answers'));
  const say = useWriteRecords();
  const [accepting, setAccepting] = useState(false);
  const key = suggestionKey(lesson);
  const declined = answers?.find(({ value }) => value.question === key && value.answer === 'declined');
  const accepted = rules?.find(({ value }) => isLearned(value, lesson));
  const decline = () => {
    const value = { question: key, answer: 'declined' as const, answeredOn: on, note: rateText(suggestion.perNight) };
    void say(w.saidDeclined, { kind: 'answers', value, base: null, before: null });
  };
  const again = (answer: NonNullable<typeof declined>) => {
    const base = { revisionId: answer.revisionId, recordId: answer.recordId };
    void say(w.saidAgain, { kind: 'answers', value: null, base, before: answer.value });
  };
  return (
    <>
      <h3>{w.thresholds}</h3>
      <Table
        label={w.thresholds}
        className="thresholds"
        fixed
        rows={[
          {
            source: w.suggestion,
            remark: w.leftOutOfFit,
            perNight: writtenThreshold(suggestion.perNight),
            errors: suggestion.errors,
          },
          inForce
            ? { ...inForce, source: `${w.now}: ${inForce.source || inForce.ruleId}`, remark: null }
            : { source: w.noRule, remark: null, perNight: null, errors: null },
        ]}
        keyOf={(_, index) => index}
        columns={[
          {
            head: w.columns.source,
            value: ({ source }) => source,
            cell: ({ source, remark }) => (
              <>
                {source} {remark && <span className="faint">({remark})</span>}
              </>
            ),
            names: true,
          },
          {
            head: w.columns.threshold,
            value: ({ perNight }) => perNight,
            cell: ({ perNight }) => (perNight === null ? '–' : rateText(perNight)),
            number: true,
          },
          { head: w.columns.missed, value: ({ errors }) => (errors ? errorText(errors.missed) : '–') },
          { head: w.columns.needless, value: ({ errors }) => (errors ? errorText(errors.needless) : '–') },
        ]}
      />
      <p className="key">
        {w.missedMeans} {!accepted && w.never}
      </p>
      {accepted ? (
        <p className="answered">
          {w.accepted(accepted.authorName, dayTextFrom(accepted.value.validFrom ?? on, on))} {w.seeRule}
        </p>
      ) : declined ? (
        <p className="answered">
          {w.declined(declined.authorName, dayText(declined.value.answeredOn))}{' '}
          <button type="button" className="plain-button" onClick={() => again(declined)}>
            {w.again}
          </button>
        </p>
      ) : (
        <div className="actions">
          <button type="button" className="button" aria-haspopup="dialog" onClick={() => setAccepting(true)}>
            {w.accept}
          </button>
          <button type="button" className="plain-button" onClick={decline}>
            {w.decline}
          </button>
        </div>
      )}
      {accepting && <AcceptPanel lesson={lesson} learned={learned} on={on} close={() => setAccepting(false)} />}
    </>
  );
}
