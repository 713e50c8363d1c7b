import { type Advice, citation } from '@duskwatch/core';
import type { ReactNode } from 'react';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { CheckTable } from './CheckTable.tsx';

/** Why the verb is what it is: the evidence, the cautions beside it, the rule and its source. */
export function EvidencePanel({ advice, foot }: { advice: Advice; foot?: ReactNode }) {
  const w = words.evidence;
  const wording = useWording();
  const cited = citation(advice.source);
  const { rule, confidence, because, cautions } = advice;
  return (
    <div className="evidence">
      <div className="evidence-because">
        <h4>{w.because}</h4>
        <ul>
          {because.map((each, index) => (
            // Evidence is a value without identity and never reorders within one advice.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <li key={index}>
              {wording.evidence(each)}
              {each.kind === 'rate' && each.checks.length > 0 && (
                <Folded title={w.checks(each.checks.length)}>
                  <CheckTable checks={each.checks} />
                </Folded>
              )}
            </li>
          ))}
        </ul>
      </div>
      {cautions.length > 0 && (
        <div className="evidence-cautions">
          <h4>{w.cautions}</h4>
          <ul>
            {cautions.map((each) => (
              <li key={JSON.stringify(each)}>{wording.caution(each)}</li>
            ))}
          </ul>
        </div>
      )}
      <dl className="evidence-rule">
        <dt>{w.rule}</dt>
        <dd>
          {rule
            ? `${[w.ruleKind[rule.kind], ...(rule.region === '' ? [] : [w.region(wording.region(rule.region))])].join(', ')} (${wording.standing[rule.standing]})`
            : w.noRule}
        </dd>
        <dt>{w.source}</dt>
        <dd>{cited ? <cite lang="en">{cited}</cite> : w.noSource}</dd>
        <dt>{w.confidence}</dt>
        <dd>{confidence ? wording.confidence[confidence] : w.noConfidence}</dd>
      </dl>
      {foot && <p className="evidence-foot">{foot}</p>}
    </div>
  );
}
