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

/** Fields that need nothing, folded or shown among the others. */
export interface Fold {
  readonly group: string;
  readonly fields: readonly WeekField[];
  readonly open: boolean;
}

/** Some fields that follow one another in a group, drawn together. */
export interface WeekChunk {
  readonly key: string;
  /** Of the group, in front of its first chunk; null before the others, and where the order knows no groups. */
  readonly title: string | null;
  readonly fields: readonly WeekField[];
  /** After the last chunk of a group: its fields that need nothing, in a line. */
  readonly fold: Fold | null;
  /** Drawn wherever the window is. */
  readonly always: boolean;
}

/** @param unfolded groups whose folded fields stand among the others */
export function chunksOf(
  groups: readonly WeekGroup[],
  { size, first }: Portions,
  unfolded: ReadonlySet<string> = new Set(),
): WeekChunk[] {
  const all = groups.reduce((sum, { fields }) => sum + fields.length, 0) <= DRAWN_AT_ONCE;
  const chunks = groups.flatMap(({ title, fields, folded }) => {
    const open = title !== null && unfolded.has(title);
    const shown = open ? [...fields, ...folded] : fields;
    const count = Math.max(1, Math.ceil(shown.length / size));
    return Array.from({ length: count }, (_, index) => ({
      key: `${title ?? ''}|${index}`,
      title: index === 0 ? title : null,
      fields: shown.slice(index * size, (index + 1) * size),
      fold: index === count - 1 && title !== null && folded.length > 0 ? { group: title, fields: folded, open } : null,
    }));
  });
  let before = 0;
  return chunks.map((chunk) => {
    const always = all || before < first;
    before += Math.max(1, chunk.fields.length);
    return { ...chunk, always };
  });
}

/** The cell that stands open, if it is one of these. */
export const openIn = ({ fields }: WeekChunk, open: string | undefined): string | undefined =>
  open !== undefined && fields.some(({ fieldId }) => open.startsWith(cellKey(fieldId, ''))) ? open : undefined;
