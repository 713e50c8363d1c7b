/** Every string of the bar on a phone in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const barEn = {
  label: 'Pages',
  places: {
    round: 'Round',
    scout: 'Scout',
    fields: 'Fields',
    ownFields: 'My fields',
    record: 'Record',
    map: 'Map',
    week: 'Week',
    questions: 'Questions',
    more: 'More',
  },
  unsent: (n: number) => `${plural(n, 'record', 'records')} not sent yet`,
  open: (n: number) => plural(n, 'open question', 'open questions'),
};

export type BarWords = typeof barEn;
