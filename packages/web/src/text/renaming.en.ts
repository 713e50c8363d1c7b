/** Every string of changing an identifier in English. */
export const renamingEn = {
  open: 'Change the short name',
  title: (name: string) => `Another short name for ${name}`,
  label: 'Short name',
  text: 'All that names it follows: checks, lures, samples, the traps that inform it. What was said before keeps the name it was said with.',
  labels: 'Printed labels still carry the old name: print new ones, and let phones send what they hold first.',
  save: 'Change it',
  saved: (n: number) => `Changed in ${n} ${n === 1 ? 'record' : 'records'}.`,
};

export type RenamingWords = typeof renamingEn;
