/** A normal belief about a figure. */
export interface Belief {
  readonly mean: number;
  readonly sd: number;
}
