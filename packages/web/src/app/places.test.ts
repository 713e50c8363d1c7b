import type { Role } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { helpEn } from '../text/help.en.ts';
import { helpFor, PLACES, PROGRAM_PAGES, placeOf, placesFor, programPagesFor } from './places.ts';

test.each([
  ['/', 'week'],
  ['/fields', 'fields'],
  ['/map', 'fields'],
  ['/fields/map', 'fields'],
  ['/fields/quernstead-kiln', 'fields'],
  ['/traps/CR2-MC-26', 'fields'],
  ['/questions', 'fields'],
  ['/conflicts', 'fields'],
  ['/rounds', 'rounds'],
  ['/rounds/scouting', 'rounds'],
  ['/fields/quernstead-kiln/scouting/helicoverpa-zea', 'rounds'],
  ['/flights', 'flights'],
  ['/season', 'season'],
  ['/season/review', 'season'],
  ['/program/people', 'program'],
  ['/help', 'program'],
  ['/join/abc', null],
  ['/nowhere', null],
])('%s belongs to %s', (path, place) => expect(placeOf(path)).toBe(place));

test('a role has the places that it reaches a page in, and lands on the first of these', () => {
  const landings = (role: Role) => placesFor(role).map(({ pages }) => pages[0].to);
  expect(landings('coordinator')).toEqual(['/', '/fields', '/rounds', '/flights', '/season']);
  expect(landings('scout')).toEqual(['/', '/fields', '/rounds/scouting', '/flights', '/season']);
  expect(landings('grower')).toEqual(['/', '/fields', '/rounds/scouting', '/flights', '/season/review']);
  expect(landings('reader')).toEqual(['/']);
  expect(programPagesFor('reader').map(({ to }) => to)).toEqual(['/program/rules', '/program/settings', '/help']);
  expect(programPagesFor('scout').map(({ to }) => to)).not.toContain('/program/people');
});

test.each([
  ['/', 'week'],
  ['/fields', 'list'],
  ['/fields/quernstead-kiln', 'field'],
  ['/traps/CR2-MC-26', 'trap'],
  ['/fields/quernstead-kiln/scouting/helicoverpa-zea', 'sampling'],
  ['/season', 'season'],
  ['/program/rules', 'rules'],
  ['/help', null],
])('%s is read by %s of the help', (path, part) => expect(helpFor(path)).toBe(part));

test('every page of a place and of the program has its part of the help', () => {
  const pages = [...PLACES.flatMap(({ pages }) => [...pages]), ...PROGRAM_PAGES];
  const parts = pages.filter(({ id }) => id !== 'help' && id !== 'round').map(({ to }) => helpFor(to));
  expect(parts.filter((part) => part === null || !(part in helpEn.pages))).toEqual([]);
});
