/** Every string of a grower's own fields in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const ownFieldsEn = {
  title: 'My fields',
  countsTo: (day: string | null) => (day === null ? 'no trap checked yet' : `traps counted to ${day}`),
  reading: 'Reading your fields …',
  /** After the verb and its date: `Scout by Fri 17 July: corn earworm`. */
  of: (insect: string) => `: ${insect}`,
  also: 'Also',
  waits: (n: number) => `${plural(n, 'record', 'records')} of yours ${n === 1 ? 'waits' : 'wait'} here for signal`,
  rest: 'The rest',
  nothing: 'Nothing to do in your fields',
  fields: (n: number) => plural(n, 'field', 'fields'),
  next: (day: string) => `traps checked next ${day}`,
  none: {
    title: 'No field of yours yet',
    text: 'The coordinator of the program writes down farms and fields. Once yours are there, this page says what each of them asks for.',
  },
};

export type OwnFieldsWords = typeof ownFieldsEn;
