/** Documents to print and to subscribe to, for whoever has a program in hand. */
export { calendarOf } from './calendar.ts';
export { checklistsPdf } from './checklist.ts';
export { labelSummary, labelsPdf } from './labels.ts';
export { scoutingPdf } from './scouting-sheets.ts';
export { areProblems, trapsToLabel } from './which-traps.ts';
