/** Every string of the forms that print labels and checklists, in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const documentsEn = {
  open: 'Print labels',
  title: 'Labels and checklists',
  grid: 'Sheet',
  gridName: (paper: string, columns: number, rows: number, size: string) =>
    `${paper === 'Letter' ? 'US Letter' : paper}, ${columns} × ${rows} labels of ${size}`,
  gridNote: 'Sheets differ by a millimetre or so. Print at full size (100 %), first with edges on plain paper.',
  start: 'First label',
  startNote: (of: number) => `Of ${of}, counted along the rows: on a part-used sheet, the first that is left.`,
  which: 'Traps',
  listed: (n: number) => `those listed here (${n})`,
  all: 'all that hang or are to be hung',
  language: 'Language',
  contact: 'How to reach the coordinator',
  contactNote: 'A name and a telephone number. Printed on every label and remembered on this device.',
  outlines: 'Draw the labels’ edges, for a trial print',
  count: (labels: number, sheets: number) => `${plural(labels, 'label', 'labels')} on ${plural(sheets, 'sheet', 'sheets')}.`,
  legible: (letters: string, way: string) => `Trap codes in letters ${letters} mm high, legible from about ${way}.`,
  rule: (source: string, standing: string) =>
    `By: ${source} (${standing}). By day, with clear sight; less through a dusty window.`,
  leads: (origin: string) => `The codes open ${origin}.`,
  onlyHere: (origin: string) =>
    `The codes open ${origin}, which no phone can reach: this server serves this machine alone. Serve it under an address first.`,
  withoutCode: (traps: string) => `Too long for a code on these labels: ${traps}. Take larger labels.`,
  replaced: (traps: string) => `Letters that cannot be printed, shown as “?”: ${traps}.`,
  none: 'No trap to label.',
  make: 'Download the labels (PDF)',
  making: 'Making them …',
  failed: 'The labels could not be made.',
  file: 'trap-labels',
  checklists: {
    title: 'Checklists for hanging',
    text: 'Materials, place, height, gloves for each species and what to beware of, one page for each design.',
    paper: 'Paper',
    make: 'Download the checklists (PDF)',
    file: 'hanging-checklists',
  },
};

export type DocumentsWords = typeof documentsEn;
