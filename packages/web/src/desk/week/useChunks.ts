import { startTransition, useEffect, useMemo, useState } from 'react';
import { useOnPaper } from '../../ui/media.ts';
import { chunksOf, type Portions, type WeekChunk } from './chunks.ts';
import type { WeekGroup } from './select.ts';

export interface Chunks {
  readonly chunks: readonly WeekChunk[];
  readonly toFollow: number;
}

/**
 * The chunks of the groups: of many, those that are seen first are on the page first, and the places of the others follow
 * when it stands.
 *
 * @returns the chunks to draw or to keep a place for, and how many fields are still to follow
 */
export function useChunks(groups: readonly WeekGroup[], portions: Portions, unfolded: ReadonlySet<string>): Chunks {
  const [stands, setStands] = useState(false);
  useEffect(() => startTransition(() => setStands(true)), []);
  const paper = useOnPaper();
  const chunks = useMemo(
    () => chunksOf(groups, paper ? { ...portions, first: Number.POSITIVE_INFINITY } : portions, unfolded),
    [groups, portions, paper, unfolded],
  );
  if (stands || paper) return { chunks, toFollow: 0 };
  const later = chunks.filter(({ always }) => !always);
  return {
    chunks: chunks.filter(({ always }) => always),
    toFollow: later.reduce((sum, { fields }) => sum + fields.length, 0),
  };
}
