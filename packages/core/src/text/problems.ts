/** What is wrong with what somebody wrote, in their language. */

import type { Fault } from '../base/fault.ts';
import type { Problem } from '../base/problem.ts';
import type { Language } from '../people/person.ts';
import { faultSpanish } from './problems.es.ts';
import type { TradeNames } from './trade-names.ts';

export interface ProblemInWords {
  readonly expected: string;
  readonly fix: string;
  /** English where only English has words for it: what no form and no phone meets in daily work. */
  readonly language: Language;
}

export function problemInWords({ expected, fix, fault }: Problem, language: Language, names: TradeNames): ProblemInWords {
  if (language === 'en' || fault === undefined) return { expected, fix, language: 'en' };
  return { ...sayFault(fault, names), language };
}

const sayFault = <K extends Fault['kind']>(
  fault: Fault & { readonly kind: K },
  names: TradeNames,
): Omit<ProblemInWords, 'language'> =>
  (faultSpanish[fault.kind] as (fault: Fault, names: TradeNames) => Omit<ProblemInWords, 'language'>)(fault, names);
