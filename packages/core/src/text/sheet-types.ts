import type { SheetProposal, SheetQuestion, SheetReading } from '../records/sheet-match.ts';

/** Sentences about a sheet that is to be imported. */
export interface SheetWording {
  /** What was understood, on one line: "12 traps, 214 checks, 3 May–12 September 2024". */
  readonly reading: (reading: SheetReading) => string;
  /** A sheet that is not read, and why. */
  readonly aside: (sheet: SheetProposal['asideSheets'][number]) => string;
  readonly question: (question: SheetQuestion) => string;
  /** Where it stands and what stands there: why there is a question at all. */
  readonly evidence: (question: SheetQuestion) => string;
}
