/** What the addresses of the scouting pages say: a plan with its limits and risks can be sent to somebody. */
import type { PlanOptions } from '@duskwatch/core';
import { type DaySearch, daySearch } from '../../browser/address.ts';

export const LIMITS = ['m0', 'm1', 'alpha', 'beta', 'correlation', 'k'] as const satisfies readonly (keyof PlanOptions)[];
export type Limit = (typeof LIMITS)[number];

export interface PlanSearch extends DaySearch, Partial<Record<Limit, number | undefined>> {
  readonly rule?: string | undefined;
}

export function planSearch(raw: Readonly<Record<string, unknown>>): PlanSearch {
  const numbers = Object.fromEntries(
    LIMITS.flatMap((limit) => {
      const value = Number(raw[limit]);
      return raw[limit] !== undefined && raw[limit] !== '' && Number.isFinite(value) ? [[limit, value]] : [];
    }),
  );
  const rule = typeof raw.rule === 'string' && raw.rule !== '' ? raw.rule : undefined;
  return { ...daySearch(raw), rule, ...numbers };
}

/** The sheets to print, as the server takes them. */
export function sheetsAddress(
  sheets: readonly string[],
  paper: 'a4' | 'letter',
  language: string,
  { rule: _, ...options }: PlanSearch,
): string {
  const query = new URLSearchParams({ paper, language });
  for (const sheet of sheets) query.append('sheet', sheet);
  for (const [key, value] of Object.entries(options)) if (value !== undefined) query.set(key, String(value));
  return `/api/scouting.pdf?${query}`;
}
