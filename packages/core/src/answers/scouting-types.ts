/** What a scout needs in the field to sample by: complete, so that it works without signal. */
import type { Verb } from '../advice/types.ts';
import type { IsoDay } from '../base/index.ts';
import type { LocalName } from '../catalogue/types.ts';
import type { CountingPlan } from '../scouting/counting.ts';
import type { ScoutingPlan } from '../scouting/plan-for.ts';
import type { RoundField } from './round-types.ts';
import type { InsectName } from './types.ts';

/** Whether a rule speaks for the crop as it was last seen. */
export type StageMatch = 'now' | 'any' | 'unknown' | 'not-yet' | 'over';

export interface ScoutingPair {
  readonly insect: string;
  readonly verb: Verb;
  readonly by: IsoDay | null;
  /** Plans of the rules for the pair, those that hold now first; none: no figure is published, count only. */
  readonly rules: readonly { readonly ruleId: string; readonly match: StageMatch }[];
  /** The newest sample of this season. */
  readonly lastSample: {
    readonly sampledOn: IsoDay;
    readonly kind: string;
    readonly examined: number;
    readonly infested: number | null;
    readonly total: number | null;
  } | null;
}

export interface ScoutingField extends Omit<RoundField, 'stages'> {
  readonly growthHabit: string | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** Most urgent first. */
  readonly pairs: readonly ScoutingPair[];
}

export interface ScoutingView {
  readonly program: { readonly name: string; readonly invented: boolean };
  readonly on: IsoDay;
  readonly insects: readonly InsectName[];
  /** Crops of the fields, with the stages that somebody may see, in order. */
  readonly crops: readonly {
    readonly crop: string;
    readonly stages: readonly { readonly id: string; readonly name: LocalName }[];
  }[];
  /** Each plan once, by its rule. */
  readonly plans: readonly ScoutingPlan[];
  /** For insects without a rule that a sample could reach. */
  readonly counting: readonly CountingPlan[];
  /** What to look for on a unit of a crop. */
  readonly looks: readonly {
    readonly insect: string;
    readonly crop: string;
    readonly unit: string;
    readonly text: LocalName;
    readonly source: string;
  }[];
  /** Most urgent first. */
  readonly fields: readonly ScoutingField[];
}
