/** What the places of traps leave in doubt before the season begins. */

import { distanceKm } from '../base/distance.ts';
import type { Shape } from '../base/shape.ts';
import type { TrapRecord } from '../records/schema.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { placingQuestionSchema } from './schema.ts';

export type PlacingQuestion = Shape<typeof placingQuestionSchema>;

/** Questions about traps that hang at the same time; taken-down ones are the caller's to leave out. */
export function placingQuestions(traps: readonly TrapRecord[]): PlacingQuestion[] {
  const questions: PlacingQuestion[] = [];
  for (const group of spots(traps)) {
    if (group.length < 2) continue;
    const metres = group.flatMap((a) => group.map((b) => metresBetween(a, b) ?? 0));
    questions.push({ kind: 'one-spot', trapIds: group.map(({ trapId }) => trapId), farthestM: Math.max(...metres) });
  }
  const lost = new Map<string, string[]>();
  for (const { station, trapId, latitude, longitude } of traps)
    if (latitude === null || longitude === null) lost.set(station, [...(lost.get(station) ?? []), trapId]);
  for (const [station, trapIds] of lost) questions.push({ kind: 'no-coordinates', station, trapIds });
  return questions;
}

/** Traps that tell independently of each other: those on one spot are one. */
export const independentTraps = (traps: readonly TrapRecord[]): number => spots(traps).length;

/** Traps of one insect and design, grouped where each is near another of the group; one of unknown place is alone. */
function spots(traps: readonly TrapRecord[]): TrapRecord[][] {
  let groups: TrapRecord[][] = [];
  for (const trap of traps) {
    const near = groups.filter((group) => group.some((other) => share(trap, other)));
    groups = [...groups.filter((group) => !near.includes(group)), [...near.flat(), trap]];
  }
  return groups;
}

function share(a: TrapRecord, b: TrapRecord): boolean {
  if (a.insect !== b.insect || a.design !== b.design) return false;
  const metres = metresBetween(a, b);
  return metres !== null && metres <= SEASON_ASSUMPTIONS.samePlaceM.value;
}

function metresBetween(a: TrapRecord, b: TrapRecord): number | null {
  const km = distanceKm(a, b);
  return km === null ? null : km * 1000;
}
