/** Who finds what under the thumb: four places at most, the first of which they begin at. */
import type { RecordKind, Role } from '@duskwatch/core';
import type { StoredKind } from '../../sync/types.ts';

export type BarPlaceId = 'round' | 'scout' | 'fields' | 'ownFields' | 'record' | 'map' | 'week' | 'questions' | 'more';

export interface BarPlace {
  readonly id: BarPlaceId;
  readonly to: '/' | '/round' | '/scout' | '/fields' | '/map' | '/record' | '/questions' | '/more';
}

const ROUND: BarPlace = { id: 'round', to: '/round' };
const MORE: BarPlace = { id: 'more', to: '/more' };

const PLACES: Readonly<Record<Role, readonly [BarPlace, ...BarPlace[]]>> = {
  scout: [ROUND, { id: 'scout', to: '/scout' }, { id: 'fields', to: '/fields' }, MORE],
  grower: [{ id: 'ownFields', to: '/' }, { id: 'record', to: '/record' }, { id: 'map', to: '/map' }, MORE],
  coordinator: [{ id: 'week', to: '/' }, ROUND, { id: 'questions', to: '/questions' }, MORE],
  reader: [{ id: 'week', to: '/' }, MORE],
};

export const barPlaces = (role: Role): readonly [BarPlace, ...BarPlace[]] => PLACES[role];

/** Where a person begins on a phone. */
export const firstPlace = (role: Role): BarPlace['to'] => PLACES[role][0].to;

/** Which of a role's places an address belongs to: its own, else the one it is reached from. */
export function placeAt(role: Role, path: string): BarPlaceId {
  const places = PLACES[role];
  const own = places.find(({ to }) => to === path);
  if (own) return own.id;
  if (/^\/(fields|traps)\//.test(path)) {
    const parent = places.find(({ id }) => id === 'fields' || id === 'ownFields' || id === 'week');
    if (parent) return parent.id;
  }
  return 'more';
}

const WITH_THE_ROUND: ReadonlySet<StoredKind> = new Set<RecordKind>(['checks', 'lures', 'stages']);

/** In which of a role's places a record that waits is looked for. */
export function placeOfRecord(role: Role, kind: StoredKind): BarPlaceId {
  const has = (id: BarPlaceId) => PLACES[role].some((place) => place.id === id);
  if (has('record')) return 'record';
  if (kind === 'samples' && has('scout')) return 'scout';
  if (kind === 'answers' && has('questions')) return 'questions';
  if ((WITH_THE_ROUND.has(kind) || kind === 'samples') && has('round')) return 'round';
  return 'more';
}
