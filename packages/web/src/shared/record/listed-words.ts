/** What the words of a closed list are called; a list that gains a word does not compile until it is named. */
import type { RecordKind, Wording } from '@duskwatch/core';
import { recordWords } from '../../text/record.ts';
import type { ListedWords } from '../../text/record-labels.ts';

const listedWords = ({ design, condition, unfitReason, skipReason, decision, decisionReason }: Wording): ListedWords => ({
  fields: {},
  stages: {},
  traps: { design },
  lures: {},
  checks: { condition, unfitReason },
  skips: { reason: skipReason },
  sources: { kind: recordWords.sourceKinds, service: recordWords.services },
  weather: {},
  normals: {},
  samples: {},
  treatments: { rateUnit: recordWords.rateUnits },
  decisions: { decision, reason: decisionReason },
  rules: { design, per: recordWords.per, may: recordWords.may },
  seasons: { checkWeekdays: recordWords.weekdays },
  plans: { design },
  prices: { item: recordWords.items },
  stock: { item: recordWords.items },
  answers: { answer: recordWords.answers },
});

/** Names of the words that a property is chosen from; null where it is not chosen from a list. */
export function namesOfWords(kind: RecordKind, property: string, wording: Wording): Readonly<Record<string, string>> | null {
  const listed: Readonly<Record<string, Readonly<Record<string, string>>>> = listedWords(wording)[kind];
  return listed[property] ?? null;
}
