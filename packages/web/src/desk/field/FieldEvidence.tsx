import type { FieldInsectView, FieldView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { rateText } from '../../format/number.ts';
import { CheckTable } from '../../shared/advice/CheckTable.tsx';
import { fieldPageWords as w } from '../../text/field-page.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { OtherRules, RuleTable } from './RuleTable.tsx';
import { otherwiseText } from './Verdict.tsx';

/** What the verb rests on, its rule with the step in force, what would change it, and what other rules would have said. */
export function FieldEvidence({ view, insect }: { view: FieldView; insect: FieldInsectView }) {
  const { advice, rules, otherwise } = insect;
  const { crop } = view.field;
  const wording = useWording();
  const inUse = rules.find((rule) => rule.inUse);
  const others = rules.filter((rule) => !rule.inUse);
  // Those stand below, each with its figure.
  const because = advice.because.filter(({ kind }) => kind !== 'other-rule');
  return (
    <aside className="field-evidence" aria-label={words.field.evidence}>
      <h3>{words.evidence.because}</h3>
      <ul className="because">
        {because.map((each, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: evidence is a value without identity
          <li key={index}>
            {wording.evidence(each)}
            {each.kind === 'rate' && each.checks.length > 0 && (
              <Folded title={words.evidence.checks(each.checks.length)}>
                <CheckTable checks={each.checks} />
              </Folded>
            )}
          </li>
        ))}
      </ul>
      <h3>{w.rule.title}</h3>
      {inUse ? <RuleTable rule={inUse} crop={crop} /> : <p>{rules.length === 0 ? w.rule.none : words.evidence.noRule}</p>}
      {advice.confidence && <h3>{w.confidence(wording.confidence[advice.confidence])}</h3>}
      {otherwise.length > 0 && (
        <>
          <h3>{w.otherwise.title}</h3>
          <ul className="otherwise">
            {otherwise.map((each) => (
              <li key={`${each.when}|${each.perNight}`}>
                <span>{otherwiseText(each, rateText)}</span>
                <b className={`verb-${each.verb}`}>
                  <span className="verb-word">{wording.verb[each.verb]}</span>
                </b>
              </li>
            ))}
          </ul>
        </>
      )}
      {advice.cautions.length > 0 && (
        <>
          <h3>{words.evidence.cautions}</h3>
          <ul className="cautions">
            {advice.cautions.map((each) => (
              <li key={JSON.stringify(each)}>{wording.caution(each)}</li>
            ))}
          </ul>
        </>
      )}
      {others.length > 0 && (
        <>
          <h3>{w.rule.others}</h3>
          <OtherRules rules={others} crop={crop} />
        </>
      )}
      {advice.verb !== 'none' && (
        <p>
          <Link
            to="/fields/$fieldId/scouting/$insect"
            params={{ fieldId: view.field.fieldId, insect: insect.insect.id }}
            className="button"
          >
            {words.evidence.scouting}
          </Link>
        </p>
      )}
    </aside>
  );
}
