import { ROLES } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { barPlaces, firstPlace, placeAt, placeOfRecord } from './places.ts';

test('each role finds its own four places at most under the thumb, and begins at the first', () => {
  expect(ROLES.map((role) => [role, firstPlace(role), barPlaces(role).map(({ id }) => id)])).toEqual([
    ['coordinator', '/', ['week', 'round', 'questions', 'more']],
    ['scout', '/round', ['round', 'scout', 'fields', 'more']],
    ['grower', '/', ['ownFields', 'record', 'map', 'more']],
    ['reader', '/', ['week', 'more']],
  ]);
});

test.each([
  ['scout', '/round', 'round'],
  ['scout', '/fields/sparrow', 'fields'],
  ['scout', '/traps/T1', 'fields'],
  ['scout', '/', 'more'],
  ['grower', '/map', 'map'],
  ['grower', '/fields/sparrow', 'ownFields'],
  ['coordinator', '/fields/sparrow', 'week'],
  ['coordinator', '/season/review', 'more'],
  ['reader', '/program/rules', 'more'],
] as const)('a %s at %s is in the place %s', (role, path, place) => {
  expect(placeAt(role, path)).toBe(place);
});

describe('what waits to be sent is counted in the place that holds it', () => {
  test.each([
    ['scout', 'checks', 'round'],
    ['scout', 'lures', 'round'],
    ['scout', 'samples', 'scout'],
    ['scout', 'answers', 'more'],
    ['grower', 'treatments', 'record'],
    ['grower', 'stages', 'record'],
    ['coordinator', 'checks', 'round'],
    ['coordinator', 'answers', 'questions'],
    ['coordinator', 'fields', 'more'],
  ] as const)('of a %s: %s in %s', (role, kind, place) => {
    expect(placeOfRecord(role, kind)).toBe(place);
    expect(barPlaces(role).map(({ id }) => id)).toContain(place);
  });
});
