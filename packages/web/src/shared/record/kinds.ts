/** What can be written down of a field. */
import type { RecordKind } from '@duskwatch/core';

export const RECORDED = ['stages', 'samples', 'treatments', 'decisions'] as const satisfies readonly RecordKind[];
export type Recorded = (typeof RECORDED)[number];
