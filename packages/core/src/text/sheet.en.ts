import type { SheetWording } from './sheet-types.ts';

const many = (count: number, one: string, more = `${one}s`): string =>
  `${count.toLocaleString('en')} ${count === 1 ? one : more}`;

export const sheetEnglish: SheetWording = {
  reading: ({ kind, traps, checks, insects, from, to, words, days }) => {
    const when = from === null || to === null ? 'no day certain yet' : from === to ? from : `${from} to ${to}`;
    if (kind === 'weather') return `Weather of ${many(days, 'day')}, ${when}`;
    const told = words.length === 0 ? '' : `, ${many(words.length, 'word')} in place of or beside counts`;
    const of = insects.length === 0 ? '' : ` of ${insects.join(', ')}`;
    return `${many(traps, 'trap')}${of}, ${many(checks, 'check')} on ${many(days, 'day')}, ${when}${told}`;
  },
  aside: ({ sheet, why }) =>
    `Not read: ${sheet}, ${why === 'hidden' ? 'a hidden sheet' : why === 'summary' ? 'which sums up the others' : 'which has no counts and no weather'}`,
  question: ({ ask, about }) => {
    switch (ask) {
      case 'dateOrder':
        return `${about}: does the day come first (dmy), or the month (mdy)?`;
      case 'year':
        return `The days have no year, as in ${about}. Which year are they of?`;
      case 'figures':
        return 'Are the figures all moths since the trap was last emptied (total), or already divided: per night, per week?';
      case 'dayMeans':
        return 'The days are those on which weeks begin. How many days later was the trap checked?';
      case 'word':
        return about?.includes('#')
          ? `What does “${about}” mean, where # is the figure in the cell?`
          : `What does “${about}” mean in place of a count?`;
      case 'insectName':
        return `Which insect is “${about}”?`;
      case 'insect':
        return 'Which insect are the traps for?';
      case 'design':
        return 'Of which design are the traps?';
      case 'designName':
        return `Which trap design is “${about}”?`;
      case 'crop':
        return 'Which crop grows in the fields?';
      case 'farm':
        return 'Which farm do the fields belong to?';
      case 'field':
        return 'Which field do the traps inform? each-trap: a field of its own for each.';
      case 'condition':
        return 'Were the traps fit at these visits, where the sheet does not say otherwise?';
      case 'hungOn':
        return 'On which day were the traps hung? first-date: on the day of the first count, which then has no nights before it.';
      case 'temperatureUnit':
        return 'In which unit are the temperatures: °C, °F, or tenths of °C (tenths-C)?';
      case 'precipitationUnit':
        return 'In which unit is the precipitation: mm, inches (in), or tenths of mm (tenths-mm)?';
      case 'source':
        return 'What is the weather source called, as fields name it?';
      case 'clock':
        return 'The times are in world time. How many hours are to be added for the site (-5 for five hours behind)?';
    }
  },
  evidence: ({ evidence, cells }) => {
    const shown = evidence.map(
      ({ sheet, row, column, text }) => `${text || 'an empty cell'} in ${sheet === null ? '' : `${sheet} `}${column}${row}`,
    );
    const more = cells - evidence.length;
    return `${shown.join('; ')}${more > 0 ? `; and ${more.toLocaleString('en')} more` : ''}`;
  },
};
