import type { WeekField } from '@duskwatch/core';
import { cellKey, type WeekGroup } from './select.ts';

/** Up to this many fields are drawn all at once; of more, only those near the window. */
const DRAWN_AT_ONCE = 60;

/** In fields. */
export interface Portions {
  /** Of a chunk: small enough to be drawn within a frame on a slow machine. */
  readonly size: number;
  /** Those that fill the first window are on the page from the first moment. */
  readonly first: number;
}

export const PORTIONS = { wide: { size: 1, first: 5 }, narrow: { size: 2, first: 2 } } as const satisfies Record<
  string,
  Portions
>;

/** Some fields that follow one another in a group, drawn together. */
export interface WeekChunk {
  readonly key: string;
  /** Of the group, in front of its first chunk; null before the others, and where the order knows no groups. */
  readonly title: string | null;
  readonly fields: readonly WeekField[];
  /** Drawn wherever the window is. */
  readonly always: boolean;
}

export function chunksOf(groups: readonly WeekGroup[], { size, first }: Portions): WeekChunk[] {
  const all = groups.reduce((sum, { fields }) => sum + fields.length, 0) <= DRAWN_AT_ONCE;
  const chunks = groups.flatMap(({ title, fields }) =>
    Array.from({ length: Math.ceil(fields.length / size) }, (_, index) => ({
      key: `${title ?? ''}|${index}`,
      title: index === 0 ? title : null,
      fields: fields.slice(index * size, (index + 1) * size),
    })),
  );
  let before = 0;
  return chunks.map((chunk) => {
    const always = all || before < first;
    before += chunk.fields.length;
    return { ...chunk, always };
  });
}

/** The cell that stands open, if it is one of these. */
export const openIn = ({ fields }: WeekChunk, open: string | undefined): string | undefined =>
  open !== undefined && fields.some(({ fieldId }) => open.startsWith(cellKey(fieldId, ''))) ? open : undefined;
