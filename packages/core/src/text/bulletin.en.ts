import type { BulletinWording } from './bulletin-types.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const GENERATION: Readonly<Record<number, string>> = { 1: ' of the first generation', 2: ' of the second generation' };

export const bulletinEnglish: BulletinWording = {
  title: (program) => `${program}: moths this week`,
  week: (from, on) => `Week from ${from} to ${on}`,
  invented: 'Invented demo: no such farms, fields or catches exist.',
  summary: 'In short',
  quiet: 'Nothing is to be decided and nothing to be looked at by the rules that are known.',
  first({ insect, crops, change }, w) {
    const decide = crops.reduce((sum, crop) => sum + crop.decide, 0);
    const scout = crops.reduce((sum, crop) => sum + crop.scout, 0);
    const name = capital(w.insect(insect.id).split(' / ')[0]!);
    const more = change === 'more' ? ', and more were caught than the week before' : '';
    if (decide > 0) return `${name}: a decision is due in ${plural(decide, 'field', 'fields')}${more}.`;
    if (scout > 0) return `${name}: ${plural(scout, 'field is', 'fields are')} to be scouted${more}.`;
    return change === 'more' ? `${name}: more were caught than the week before.` : null;
  },
  caught({ week, before, change, design }, w) {
    if (week === null) return 'No catch is told this week: too few farms, or no visit that tells anything.';
    const now = `${w.figure(week.perNight)} moths a night and trap (${week.moths} in ${plural(week.nights, 'trap-night', 'trap-nights')}; ${plural(week.traps, 'trap', 'traps')} on ${week.farms} farms${design ? `, ${w.design[design]}` : ''})`;
    if (before === null || change === null) return `${now}. The week before is not known.`;
    const then = w.figure(before.perNight);
    if (change === 'unclear') return `${now}; ${then} the week before, no clear change.`;
    return `${now}, ${change} than the ${then} of the week before.`;
  },
  earlier({ earlier }, w) {
    if (earlier.length === 0) return null;
    return `In the same week: ${earlier.map(({ year, week }) => `${w.figure(week.perNight)} in ${year}`).join(', ')}.`;
  },
  crop({ crop, fields, decide, late, scout, covered, blind, by }, w) {
    const name = crop === null ? 'Other crops' : capital(w.crop(crop));
    const said = [
      decide > 0 && `a decision is due in ${decide}${late > 0 ? `, ${late} of them late` : ''}`,
      scout > 0 && `scout ${scout}`,
      covered > 0 && `${covered} covered by a treatment`,
      blind > 0 && `${blind} where it cannot be told`,
    ].filter((part) => part !== false);
    const first = by === null ? '' : ` First by ${w.day(by)}.`;
    return `${name} (${plural(fields, 'field', 'fields')}): ${said.length > 0 ? said.join('; ') : 'keep watching'}.${first}`;
  },
  expected({ event, generation, early, middle, late, lateOpen, standing }, w) {
    const what = `${capital(w.event[event])}${(generation && GENERATION[generation]) ?? ''}`;
    const memory = standing === 'memory' ? ' (by a figure from memory)' : '';
    if (lateOpen) return `${what}: most likely ${w.day(middle)}, not before ${w.day(early)}; how late is not known${memory}.`;
    if (early === late) return `${what}: ${w.day(middle)}${memory}.`;
    return `${what}: most likely ${w.day(middle)}, between ${w.day(early)} and ${w.day(late)}${memory}.`;
  },
  cautions: {
    title: 'Before anything is done',
    lines: [
      'A rule that is reached means that a decision is due. It is not a treatment.',
      'Look at the field first. The label, local law and a licensed adviser go before this bulletin: read re-entry and pre-harvest intervals, and keep away from bees in flight and from water.',
    ],
  },
  sure: {
    title: 'How sure this is',
    lines: ({ fewestFarms, withheld }) => [
      `Every figure stands on at least ${fewestFarms} farms together; what stands on fewer is not told${withheld > 0 ? ` (${withheld} this week)` : ''}. Your own fields may differ: they are in the program.`,
      'Dates come from heat so far and from the weather of past years; the two ends are passed in one year of ten each. A trap tells who flies, not what is on the plants.',
    ],
  },
  sources: { title: 'Sources', none: 'No published rule or model spoke this week.' },
  next: { title: 'Next bulletin', line: (day) => `${day}.` },
};
