/** A question in English: what is odd, how odd, and what to ask whom. */
import type { RecordQuestion } from './types.ts';

/** Two or three sentences; `insect` and names stay as the records have them. */
export function saidInEnglish(question: RecordQuestion): string {
  return [oddity(question), chance(question), asks(question)].filter((part) => part !== '').join(' ');
}

function oddity(question: RecordQuestion): string {
  const [first] = question.checks;
  const [trap, on] = [first?.trapId ?? '', first?.checkedOn ?? ''];
  switch (question.kind) {
    case 'unlikely-count':
      return `${trap} on ${on}: ${first!.count}, where the other traps and its own habit lead to about ${short(first!.expected)}.`;
    case 'columns-swapped':
      return `${trap} on ${on}: ${first!.count} of the target and ${first!.others} others; the other way round is much likelier.`;
    case 'repeated-count':
      return `${trap}: ${question.value} at ${question.checks.length} visits in a row, from ${on} to ${last(question)}.`;
    case 'same-count-everywhere':
      return `${on}: ${question.value} in ${question.traps} traps of ${question.farm ?? 'one farm'} alike.`;
    case 'entered-in-bulk':
      return `${question.author} entered ${question.checks.length} checks of ${question.days} days, ${on} to ${last(question)}, within minutes.`;
    case 'rounded-counts':
      return `${question.farm ?? 'One farm'}: ${question.rounded} of ${question.of} larger counts end in 0 or 5; one in five is usual.`;
    case 'never-catches':
      return `${trap}: nothing in ${question.nights} nights, in which other traps of its kind caught about ${short(question.expected)} each.`;
    case 'swapped-traps':
      return `${question.traps.join(' and ')}: from ${question.from} on, each catches what the other should.`;
  }
}

function chance({ probability, inSeason }: RecordQuestion): string {
  if (probability === null || inSeason === null) return '';
  return `A sound season shows this with a probability of ${inSeason < 1e-6 ? 'less than 0.000001' : `${inSeason.toPrecision(1)} at most`}.`;
}

const ASKS: { readonly [K in RecordQuestion['kind']]: string } = {
  'unlikely-count': 'Ask the scout whether the figure, the trap and the day are right, and what was seen there.',
  'columns-swapped': 'Ask the scout whether target and others stand in the right columns.',
  'repeated-count': 'Ask the scout whether the trap was emptied and counted anew each time.',
  'same-count-everywhere': 'Ask the scout whether each trap was counted.',
  'entered-in-bulk': 'Ask who entered them what the figures were copied from.',
  'rounded-counts': 'Ask the scout whether larger catches are counted or estimated: an estimate is fine when it is called one.',
  'never-catches': 'Ask the scout to look at lure, opening and place of the trap.',
  'swapped-traps': 'Ask the scout which trap is which, and whether one was moved.',
};

const asks = ({ kind }: RecordQuestion): string => ASKS[kind];

const last = ({ checks }: RecordQuestion): string => checks.at(-1)!.checkedOn;

const short = (value: number | null): string =>
  value === null ? 'an unknown number' : value < 10 ? value.toFixed(1) : value.toFixed(0);
