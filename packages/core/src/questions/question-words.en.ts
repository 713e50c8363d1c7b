import { expectedText, type QuestionWords } from './question-words.ts';

const moths = (value: number | null) => expectedText(value, 'an unknown number');

export const questionWordsEn: QuestionWords = {
  oddity(question, write) {
    const [first] = question.checks;
    const [trap, on] = [first?.trapId ?? '', first ? write(first.checkedOn) : ''];
    const last = () => write(question.checks.at(-1)!.checkedOn);
    switch (question.kind) {
      case 'unlikely-count':
        return `${trap} on ${on}: ${first!.count}, where the other traps and its own habit lead to about ${moths(first!.expected)}.`;
      case 'columns-swapped':
        return `${trap} on ${on}: ${first!.count} of the target and ${first!.others} others; the other way round is much likelier.`;
      case 'repeated-count':
        return `${trap}: ${question.value} at ${question.checks.length} visits in a row, from ${on} to ${last()}.`;
      case 'same-count-everywhere':
        return `${on}: ${question.value} in ${question.traps} traps of ${question.farm ?? 'one farm'} alike.`;
      case 'entered-in-bulk':
        return `${question.author} entered ${question.checks.length} checks of ${question.days} days, ${on} to ${last()}, within minutes.`;
      case 'rounded-counts':
        return `${question.farm ?? 'One farm'}: ${question.rounded} of ${question.of} larger counts end in 0 or 5; one in five is usual.`;
      case 'silent-trap':
        return `${trap}: nothing in ${question.nights} nights since ${write(question.since)}, in which other traps of its kind caught about ${moths(question.expected)} each.`;
      case 'loud-trap':
        return `${trap}: ${question.caught} in ${question.nights} nights since ${write(question.since)}, in which other traps of its kind caught about ${moths(question.expected)} each.`;
      case 'swapped-traps':
        return `${question.traps.join(' and ')}: from ${write(question.from)} on, each catches what the other should.`;
    }
  },
  hardlyEver: 'A sound season shows this with a probability of less than 0.000001.',
  atMost: (probability) => `A sound season shows this with a probability of ${probability} at most.`,
  asks: {
    'unlikely-count': 'Ask the scout whether the figure, the trap and the day are right, and what was seen there.',
    'columns-swapped': 'Ask the scout whether target and others stand in the right columns.',
    'repeated-count': 'Ask the scout whether the trap was emptied and counted anew each time.',
    'same-count-everywhere': 'Ask the scout whether each trap was counted.',
    'entered-in-bulk': 'Ask who entered them what the figures were copied from.',
    'rounded-counts': 'Ask the scout whether larger catches are counted or estimated: an estimate is fine when it is called one.',
    'silent-trap':
      'Ask the scout to look at lure, opening and place of the trap. Where its place is just so, answer that it is right: the field is then read by it again.',
    'loud-trap':
      'Ask the scout to look at the lure, at what was counted as the target, and at the place of the trap. Where all is in order, answer that it is right.',
    'swapped-traps': 'Ask the scout which trap is which, and whether one was moved.',
  },
};
