/** Sentences about a scouting plan, for the phone, the desk and the sheet of paper alike. */
import type { InfestationRule } from '../catalogue/types.ts';
import type { ExactCharacteristic } from '../scouting/exact.ts';
import type { Judgement } from '../scouting/plan.ts';
import type { ScoutingPlan, WalkedPlaces } from '../scouting/plan-for.ts';
import type { Standpoint } from '../scouting/walking.ts';

export type SampledUnit = InfestationRule['unit'];
type SampledSign = InfestationRule['sign'];
/** What is looked at and what counts; of a rule, or of a count without one. */
export type Sampled = Pick<ScoutingPlan, 'unit' | 'sign'>;

export interface ScoutingWording {
  /** `40 plants`. */
  readonly units: (n: number, unit: SampledUnit) => string;
  /** `plants`. */
  readonly unitName: (unit: SampledUnit) => string;
  /** What is written down for each unit: `infested`, `with eggs`, `egg masses`. */
  readonly marked: (sign: SampledSign) => string;
  /** `3 infested`, `4 egg masses`. */
  readonly found: (total: number, sampled: Sampled) => string;
  /** `10 % of plants with eggs`, `1 egg mass on 15 plants`. */
  readonly level: (mean: number, sampled: Sampled) => string;
  /** The rule's own figure, a range where its source gives one: `5–10 % of ears infested`. */
  readonly figure: (plan: ScoutingPlan) => string;
  /** Which units count. */
  readonly counts: (sampled: Sampled) => string;
  /** Where to walk, in the order of walking. */
  readonly path: (walk: WalkedPlaces, unit: SampledUnit) => readonly string[];
  /** Where on the walk the next unit is taken. */
  readonly place: (place: number, lap: number, places: number) => string;
  readonly answer: Readonly<Record<Judgement, string>>;
  /** What the answer says of the field. */
  readonly meaning: (judgement: Judgement, plan: ScoutingPlan) => string;
  /** What is left to do; empty when nothing is. */
  readonly toGo: (at: Standpoint, sampled: Sampled) => string;
  /** What the answer leads to, without telling anybody to treat. */
  readonly next: (judgement: Judgement) => string;
  /** A share of fields as a sentence about risk: `in 8 of 100 such fields`. */
  readonly inFields: (probability: number) => string;
  readonly risks: (plan: ScoutingPlan, atM0: ExactCharacteristic, atM1: ExactCharacteristic) => readonly string[];
  /** Two insects of one rule. */
  readonly together: (insect: string, share: number, sampled: Sampled) => string;
  readonly noFigure: (insect: string) => string;
  /** What was chosen for the plan where its rule says nothing. */
  readonly basis: (plan: ScoutingPlan) => string;
  /** How alike neighbours are taken to be, where that is from, and what it would mean if they were more so. */
  readonly clumping: (plan: ScoutingPlan) => string;
  readonly cautions: readonly string[];
  readonly keepOut: (until: string, product: string, hours: number) => string;
  readonly sheet: SheetWording;
}

/** The fixed words of the sheet of paper. */
interface SheetWording {
  readonly title: string;
  readonly date: string;
  readonly scout: string;
  readonly time: string;
  readonly weather: string;
  readonly stage: string;
  readonly lookFor: string;
  readonly noLook: string;
  readonly walk: string;
  readonly cautions: string;
  readonly when: string;
  readonly howTo: (sampled: Sampled, walk: WalkedPlaces) => string;
  readonly countAll: (walk: WalkedPlaces, unit: SampledUnit) => string;
  readonly place: string;
  readonly tally: (sampled: Sampled) => string;
  readonly soFar: (sampled: Sampled) => string;
  readonly below: string;
  readonly above: string;
  readonly examined: (unit: SampledUnit) => string;
  readonly lap: (lap: number) => string;
  readonly result: string;
  readonly results: readonly string[];
  readonly enter: string;
  readonly figure: string;
  readonly page: (n: number, of: number) => string;
  readonly invented: string;
  readonly none: string;
}
