/** The five places of the desk and the program's own pages: who reaches which, and where an address belongs. */
import type { Role } from '@duskwatch/core';

const STAFF: readonly Role[] = ['coordinator', 'scout'];
const MEMBERS: readonly Role[] = [...STAFF, 'grower'];
const ALL: readonly Role[] = [...MEMBERS, 'reader'];
const COORDINATOR: readonly Role[] = ['coordinator'];

/** In the order of the masthead; of a place with several pages, in the order of its own navigation. */
export const PLACES = [
  {
    id: 'week',
    pages: [
      { id: 'week', to: '/', roles: ALL },
      { id: 'bulletin', to: '/bulletin', roles: STAFF },
      { id: 'sheet', to: '/sheet', roles: ALL },
    ],
  },
  {
    id: 'fields',
    pages: [
      { id: 'list', to: '/fields', roles: MEMBERS },
      { id: 'map', to: '/map', roles: MEMBERS },
      { id: 'questions', to: '/questions', roles: STAFF },
      { id: 'conflicts', to: '/conflicts', roles: MEMBERS },
    ],
  },
  {
    id: 'rounds',
    pages: [
      { id: 'rounds', to: '/rounds', roles: COORDINATOR },
      { id: 'scouting', to: '/rounds/scouting', roles: MEMBERS },
      { id: 'counts', to: '/rounds/counts', roles: STAFF },
      { id: 'round', to: '/round', roles: STAFF },
    ],
  },
  { id: 'flights', pages: [{ id: 'flights', to: '/flights', roles: MEMBERS }] },
  {
    id: 'season',
    pages: [
      { id: 'plan', to: '/season', roles: STAFF },
      { id: 'review', to: '/season/review', roles: MEMBERS },
    ],
  },
] as const;

export const PROGRAM_PAGES = [
  { id: 'people', to: '/program/people', roles: COORDINATOR },
  { id: 'rules', to: '/program/rules', roles: ALL },
  { id: 'weather', to: '/program/weather', roles: MEMBERS },
  { id: 'data', to: '/program/data', roles: MEMBERS },
  { id: 'settings', to: '/program/settings', roles: ALL },
  { id: 'help', to: '/help', roles: ALL },
] as const;

export type PlaceId = (typeof PLACES)[number]['id'];
type Page = (typeof PLACES)[number]['pages'][number];

export interface Place {
  readonly id: PlaceId;
  /** At least one. */
  readonly pages: readonly [Page, ...Page[]];
}

const reaches = (role: Role) => (page: { readonly roles: readonly Role[] }) => page.roles.includes(role);

/** The places that a role has a page in, each with its pages. */
export const placesFor = (role: Role): Place[] =>
  PLACES.flatMap(({ id, pages }) => {
    const [first, ...others] = (pages as readonly Page[]).filter(reaches(role));
    return first ? [{ id, pages: [first, ...others] as const }] : [];
  });

export const programPagesFor = (role: Role) => PROGRAM_PAGES.filter(reaches(role));

/** The part of the help that tells how to read a page. */
export function helpFor(path: string) {
  if (/^\/fields\/[^/]+\/scouting\//.test(path)) return 'sampling';
  if (path.startsWith('/traps/')) return 'trap';
  const page = [...PLACES.flatMap(({ pages }) => [...pages]), ...PROGRAM_PAGES].find(({ to }) => to === path)?.id;
  if (page === 'plan') return 'season';
  if (page === undefined) return path.startsWith('/fields/') ? 'field' : null;
  return page === 'help' || page === 'round' ? null : page;
}

/** Pages that show the records as they are today, whatever day the others are read on. */
export const isOfToday = (path: string): boolean =>
  path === '/rounds' || path === '/conflicts' || (placeOf(path) === 'program' && path !== '/program/weather');

/** Which place an address belongs to, or the program's own pages; null: the door, or nowhere. */
export function placeOf(path: string): PlaceId | 'program' | null {
  if (path === '/' || path === '/bulletin' || path === '/sheet') return 'week';
  if (/^\/fields\/[^/]+\/scouting\//.test(path)) return 'rounds';
  if (/^\/(program\/|help(\/|$))/.test(path)) return 'program';
  // Also of a page below, such as one trap.
  const [start] = path.slice(1).split('/');
  if (start === 'traps') return 'fields';
  return PLACES.find(({ pages }) => pages.some(({ to }) => to === `/${start}`))?.id ?? null;
}
