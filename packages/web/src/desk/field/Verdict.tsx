import type { Advice, Evidence, FieldInsectView, FieldView, Otherwise } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { AnswerButton, useMayAnswer } from '../../shared/record/AnswerButton.tsx';
import { fieldPageWords } from '../../text/field-page.ts';
import { useWording } from '../../text/wording.ts';

/** Evidence that a verdict cannot do without: what its own rule says of the catch, and what has covered the field. */
function besideVerdict({ because, rule }: Advice): Evidence[] {
  const figure = because.find((each) => (each.kind === 'tier' || each.kind === 'threshold') && each.ruleId === rule?.id);
  const acts = (['treatment', 'decision'] as const).flatMap((kind) => because.find((each) => each.kind === kind) ?? []);
  return [...(figure ? [figure] : []), ...acts];
}

/** The verb with its date and lateness first, then why, then what comes after it. */
export function Verdict({ view, insect, past }: { view: FieldView; insect: FieldInsectView; past: boolean }) {
  const { advice, ahead } = insect;
  const wording = useWording();
  const mayAnswer = useMayAnswer();
  const w = fieldPageWords;
  const { verb } = advice;
  return (
    <section className={`verdict verb-${verb}`} aria-label={w.verdict}>
      <p className="verdict-verb">
        <b className="verb-word">{wording.verb[verb]}</b>
        <span>{wording.when(advice)}</span>
      </p>
      <div className="verdict-why">
        <p>{wording.inShort(advice) || wording.headline(advice)}</p>
        {besideVerdict(advice).map((each) => (
          <p key={each.kind}>{wording.evidence(each)}</p>
        ))}
      </div>
      <div className="verdict-then">
        {ahead.again.length > 0 && <p>{w.after.again(ahead.again.map(dayText).join(', '))}</p>}
        {ahead.noneFrom && verb !== 'none' && <p>{w.after.none(dayText(ahead.noneFrom))}</p>}
        {verb === 'decide' && <p>{w.after.adviser}</p>}
        {!past && (verb === 'decide' || verb === 'scout') && mayAnswer(verb) && (
          <AnswerButton className="button primary" asked={{ field: view.field, insect: insect.insect.id, verb, on: view.on }} />
        )}
      </div>
    </section>
  );
}

/** One thing that would change the verb, in words. */
export function otherwiseText({ when, perNight, intervalDays, on }: Otherwise, rate: (value: number) => string): string {
  const w = fieldPageWords.otherwise;
  switch (when) {
    case 'catch-below':
      return w['catch-below'](rate(perNight!));
    case 'catch-over':
      return intervalDays === null ? w['catch-over'](rate(perNight!)) : w['catch-over-every'](rate(perNight!), intervalDays);
    case 'cover-over':
    case 'no-check':
      return w[when](dayText(on!));
    default:
      return w[when];
  }
}
