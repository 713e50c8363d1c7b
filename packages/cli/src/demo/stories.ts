/** What went wrong, and right, in the field: the mess that any season has. */
import { type Day, day, type SkipRecord } from '@duskwatch/core';

export type Story =
  /** Down from the first day until the visit on or after the second, which hung it again; null: still down. */
  | { readonly kind: 'down'; readonly from: Day; readonly until: Day | null; readonly note: string }
  /** Fit to count, but not to trust. */
  | { readonly kind: 'doubtful'; readonly from: Day; readonly until: Day; readonly share: number; readonly note: string }
  /** Nobody came between these days, both included. */
  | { readonly kind: 'no-visits'; readonly from: Day; readonly until: Day }
  /** No lure was changed from this day on. */
  | { readonly kind: 'lure-forgotten'; readonly from: Day }
  /** The lure's stated life was not written down. */
  | { readonly kind: 'lure-life-unwritten' }
  | { readonly kind: 'hung-late'; readonly on: Day }
  /** Moths counted and left in the trap at the visit on or after this day. */
  | { readonly kind: 'left-in-trap'; readonly on: Day; readonly note: string }
  /** A nought too many in the count of the visit on or after this day. */
  | { readonly kind: 'mistyped'; readonly on: Day }
  /** Visited twice on the visit on or after this day. */
  | { readonly kind: 'second-visit'; readonly on: Day; readonly note: string };

/** Kept per trap id; `XX*YY` names every trap of a farm (first two letters) in a year. */
const STORIES: Readonly<Record<string, readonly Story[]>> = {
  'TO1-HZ-26': [
    { kind: 'down', from: day('2026-07-06'), until: null, note: 'post snapped in the storm, net flat on the ground' },
  ],
  'IV1-MC-26': [{ kind: 'down', from: day('2026-06-17'), until: day('2026-06-27'), note: 'knocked over by deer' }],
  'LA2-HZ-26': [
    { kind: 'doubtful', from: day('2026-07-08'), until: day('2026-07-15'), share: 0.6, note: 'pigweed grown over the opening' },
  ],
  'CR1-SF-26': [{ kind: 'doubtful', from: day('2026-06-29'), until: day('2026-07-04'), share: 0.7, note: 'water in the bucket' }],
  'FE3-MC-26': [{ kind: 'lure-forgotten', from: day('2026-06-02') }],
  'TO1-SF-26': [{ kind: 'lure-forgotten', from: day('2026-07-01') }],
  'OS4-HZ-26': [{ kind: 'lure-forgotten', from: day('2026-06-10') }],
  'YA1-SF-26': [{ kind: 'lure-life-unwritten' }],
  'YA1-HZ-26': [{ kind: 'hung-late', on: day('2026-07-06') }],
  'PI3-MC-26': [{ kind: 'hung-late', on: day('2026-07-02') }],
  'MA3-ON-26': [
    { kind: 'mistyped', on: day('2026-05-28') },
    { kind: 'no-visits', from: day('2026-07-01'), until: day('2026-07-15') },
  ],
  'IV4-ON-26': [{ kind: 'no-visits', from: day('2026-06-15'), until: day('2026-06-28') }],
  'YA*26': [{ kind: 'no-visits', from: day('2026-06-08'), until: day('2026-06-16') }],
  'QU1-HZ-26': [{ kind: 'left-in-trap', on: day('2026-06-30'), note: 'lid jammed, moths left in' }],
  'DU1-ON-26': [{ kind: 'left-in-trap', on: day('2026-06-12'), note: 'no bag with me, left them' }],
  'FE1-HZ-26': [{ kind: 'second-visit', on: day('2026-07-10'), note: 'looked again at dusk' }],
  'DU2-HZ-26': [{ kind: 'second-visit', on: day('2026-07-03'), note: 'recount with the adviser' }],

  'QU*25': [{ kind: 'no-visits', from: day('2025-06-23'), until: day('2025-07-01') }],
  'LA1-HZ-25': [{ kind: 'down', from: day('2025-08-03'), until: day('2025-08-14'), note: 'blown down, hung again' }],
  'CR1-HZ-25': [{ kind: 'lure-forgotten', from: day('2025-07-05') }],
  'MA*25': [{ kind: 'no-visits', from: day('2025-08-11'), until: day('2025-08-20') }],
  'OS1-MC-24': [{ kind: 'hung-late', on: day('2024-06-29') }],
  'DU1-HZ-24': [
    { kind: 'doubtful', from: day('2024-08-05'), until: day('2024-08-17'), share: 0.7, note: 'net torn at the seam' },
  ],
  'QU1-ON-24': [{ kind: 'down', from: day('2024-05-28'), until: day('2024-06-05'), note: 'ploughed under, hung again' }],
};

export const storiesOf = (trapId: string): readonly Story[] => [
  ...(STORIES[trapId] ?? []),
  ...(STORIES[`${trapId.slice(0, 2)}*${trapId.slice(-2)}`] ?? []),
];

/** Why nobody came, where the scout said so. */
export const SKIPS: readonly SkipRecord[] = [
  { trapId: 'IV4-ON-26', skippedOn: '2026-06-19', reason: 'water', note: 'the ford was over the axle' },
  { trapId: 'IV4-ON-26', skippedOn: '2026-06-23', reason: 'water', note: null },
  { trapId: 'MA3-ON-26', skippedOn: '2026-07-07', reason: 'locked', note: null },
  { trapId: 'MA3-ON-26', skippedOn: '2026-07-11', reason: 'locked', note: 'new chain on the gate, nobody home' },
];
