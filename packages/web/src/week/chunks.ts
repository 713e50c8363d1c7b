import type { WeekField } from '@duskwatch/core';
import { startTransition, useEffect, useMemo, useState } from 'react';
import { cellKey, type WeekGroup } from './select.ts';

/** Up to this many fields are drawn all at once; of more, only those near the window. */
const DRAWN_AT_ONCE = 60;
/** Small enough to be drawn within a frame or two on a slow machine. */
const CHUNK = 2;
/** The beginning is on the page from the first moment. */
const FIRST_CHUNKS = 3;

/** Some fields that follow one another in a group, drawn together. */
export interface WeekChunk {
  readonly key: string;
  /** Of the group, in front of its first chunk; null before the others, and where the order knows no groups. */
  readonly title: string | null;
  readonly fields: readonly WeekField[];
  /** Drawn wherever the window is. */
  readonly always: boolean;
}

export function chunksOf(groups: readonly WeekGroup[]): WeekChunk[] {
  const all = groups.reduce((sum, { fields }) => sum + fields.length, 0) <= DRAWN_AT_ONCE;
  const chunks = groups.flatMap(({ title, fields }) =>
    Array.from({ length: Math.ceil(fields.length / CHUNK) }, (_, index) => ({
      key: `${title ?? ''}|${index}`,
      title: index === 0 ? title : null,
      fields: fields.slice(index * CHUNK, (index + 1) * CHUNK),
    })),
  );
  return chunks.map((chunk, index) => ({ ...chunk, always: all || index < FIRST_CHUNKS }));
}

/**
 * The chunks of the groups: of many, those that are seen first are on the page first, and the places of the others follow
 * when it stands.
 *
 * @returns the chunks to draw or to keep a place for, and how many fields are still to follow
 */
export function useChunks(groups: readonly WeekGroup[]): { readonly chunks: readonly WeekChunk[]; readonly toFollow: number } {
  const chunks = useMemo(() => chunksOf(groups), [groups]);
  const [stands, setStands] = useState(false);
  useEffect(() => startTransition(() => setStands(true)), []);
  if (stands) return { chunks, toFollow: 0 };
  const first = chunks.filter(({ always }) => always);
  const toFollow = chunks.filter(({ always }) => !always).reduce((sum, { fields }) => sum + fields.length, 0);
  return { chunks: first, toFollow };
}

/** The cell that stands open, if it is one of these. */
export const openIn = ({ fields }: WeekChunk, open: string | undefined): string | undefined =>
  open !== undefined && fields.some(({ fieldId }) => open.startsWith(cellKey(fieldId, ''))) ? open : undefined;
