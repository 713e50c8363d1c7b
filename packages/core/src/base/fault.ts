/** What exactly is wrong, as values: what a problem says in English, other languages say from these. */
import type { IsoDay } from './day.ts';

export interface Wanted {
  readonly type: 'text' | 'day' | 'whole' | 'number' | 'word' | 'yes-no' | 'list';
  readonly minimum: number | null;
  readonly maximum: number | null;
}

export type Fault =
  /** A cell or box that holds something else than it should; `hint` says what to do about it. */
  | { readonly kind: 'unreadable'; readonly wanted: Wanted; readonly hint: Hint }
  | { readonly kind: 'too-long'; readonly longest: number; readonly length: number }
  | { readonly kind: 'sign-in-id' }
  | { readonly kind: 'no-such-day' }
  | { readonly kind: 'wrong-order'; readonly first: string; readonly from: IsoDay; readonly second: string }
  | { readonly kind: 'time-zone' }
  | { readonly kind: 'too-many-visits'; readonly most: number }
  | { readonly kind: 'uncounted' }
  | { readonly kind: 'reason-of-fit'; readonly condition: string }
  | { readonly kind: 'low-above-high' }
  | { readonly kind: 'forecast-after' }
  | { readonly kind: 'infested-above-examined'; readonly infested: number; readonly examined: number }
  | { readonly kind: 'places-do-not-add-up'; readonly infested: number; readonly examined: number }
  | { readonly kind: 'worn-above-stock'; readonly wornOut: number; readonly onHand: number }
  | { readonly kind: 'unknown-insect'; readonly close: readonly string[] }
  | { readonly kind: 'unknown-stage'; readonly crop: string; readonly close: readonly string[] }
  | { readonly kind: 'key-twice' }
  | { readonly kind: 'repeated-check' }
  | { readonly kind: 'unknown-reference'; readonly to: 'fields' | 'traps'; readonly close: readonly string[] }
  | { readonly kind: 'before-hung'; readonly trapId: string; readonly hungOn: IsoDay }
  | { readonly kind: 'after-taken-down'; readonly trapId: string; readonly takenDownOn: IsoDay }
  | { readonly kind: 'unknown-weather-source'; readonly known: readonly string[] }
  | { readonly kind: 'may-not-write'; readonly role: string }
  | { readonly kind: 'other-farm' }
  | { readonly kind: 'too-large' }
  | { readonly kind: 'photo-type'; readonly types: readonly string[] };

export type Hint =
  | { readonly kind: 'fill-in' }
  | { readonly kind: 'figures-only' }
  | { readonly kind: 'whole' }
  | { readonly kind: 'correct' }
  | { readonly kind: 'fahrenheit' }
  | { readonly kind: 'one-of' }
  /** Texts of which one was probably meant. */
  | { readonly kind: 'write'; readonly texts: readonly string[] };
