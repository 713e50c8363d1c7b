import type { Role } from '@duskwatch/core';
import { type QueryClient, useQuery } from '@tanstack/react-query';
import {
  createRootRouteWithContext,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
  retainSearchParams,
  stripSearchParams,
  useLocation,
} from '@tanstack/react-router';
import { Suspense } from 'react';
import { weekQuery } from '../api/queries.ts';
import { keptSession, sessionQuery } from '../api/session.ts';
import { type DaySearch, daySearch, parseSearch, type RawSearch, stringifySearch } from '../browser/address.ts';
import { flightsSearch } from '../desk/flights/search.ts';
import { mapSearch } from '../desk/map/search.ts';
import { reviewSearch } from '../desk/review/search.ts';
import { planSearch } from '../desk/scouting/search.ts';
import { seasonSearch } from '../desk/season/search.ts';
import { stationsSearch } from '../desk/traps/search.ts';
import { weekSearch } from '../desk/week/search.ts';
import { recordSearch } from '../phone/record/search.ts';
import { roundSearch } from '../phone/round/search.ts';
import { scoutSearch } from '../phone/scouting/search.ts';
import { ownFieldsQuery } from '../shared/advice/own-fields.ts';
import { firstPlace } from '../shared/bar/places.ts';
import { Failure } from '../ui/Failure.tsx';
import { isWide, useWide } from '../ui/media.ts';
import { useKeptHere } from './useKeptHere.ts';

const OF_THE_PHONE: readonly string[] = ['/round', '/scout'];
const Shell = lazyRouteComponent(() => import('./Shell.tsx'), 'Shell');

const root = createRootRouteWithContext<{ readonly queries: QueryClient }>()({
  // The day that pages are read on goes along wherever one goes, until somebody chooses another.
  validateSearch: daySearch,
  search: { middlewares: [retainSearchParams(['on'])] },
  // Beside the page's own script, not after it.
  loader: async ({ location }) => {
    if (!OF_THE_PHONE.includes(location.pathname)) await Shell.preload?.();
  },
  component: Root,
  notFoundComponent: () => <Failure kind="noPage" />,
});
const getParentRoute = () => root;
const week = createRoute({
  getParentRoute,
  path: '/',
  validateSearch: weekSearch,
  // The answer comes while the page's script does.
  beforeLoad: ({ context: { queries }, search: { on } }) => {
    void queries.ensureQueryData(sessionQuery).then(
      ({ person }) =>
        person && (hasOwnFields(person.role) ? queries.prefetchQuery(ownFieldsQuery(on)) : queries.prefetchQuery(weekQuery(on))),
      () => null,
    );
  },
  loader: async () => {
    await (hasOwnFields(keptSession()?.person?.role) ? OwnFieldsPage : WeekPage).preload?.();
  },
  component: Home,
});
const field = createRoute({
  getParentRoute,
  path: '/fields/$fieldId',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/field/FieldPage.tsx'), 'FieldPage'),
});
const flights = createRoute({
  getParentRoute,
  path: '/flights',
  validateSearch: flightsSearch,
  component: lazyRouteComponent(() => import('../desk/flights/FlightsPage.tsx'), 'FlightsPage'),
});
const traps = createRoute({
  getParentRoute,
  path: '/fields',
  validateSearch: stationsSearch,
  component: lazyRouteComponent(() => import('../desk/traps/StationsPage.tsx'), 'StationsPage'),
});
const trap = createRoute({
  getParentRoute,
  path: '/traps/$trapId',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/traps/TrapPage.tsx'), 'TrapPage'),
});
const map = createRoute({
  getParentRoute,
  path: '/map',
  validateSearch: mapSearch,
  component: lazyRouteComponent(() => import('../desk/map/MapPage.tsx'), 'MapPage'),
});
const review = createRoute({
  getParentRoute,
  path: '/season/review',
  validateSearch: reviewSearch,
  component: lazyRouteComponent(() => import('../desk/review/ReviewPage.tsx'), 'ReviewPage'),
});
const questions = createRoute({
  getParentRoute,
  path: '/questions',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/questions/QuestionsPage.tsx'), 'QuestionsPage'),
});
const conflicts = createRoute({
  getParentRoute,
  path: '/conflicts',
  component: lazyRouteComponent(() => import('../desk/conflicts/ConflictsPage.tsx'), 'ConflictsPage'),
});
/** What is written in the field is written today. */
const withoutDay = stripSearchParams<DaySearch>(['on']);
const round = createRoute({
  getParentRoute,
  path: '/round',
  validateSearch: roundSearch,
  search: { middlewares: [withoutDay] },
  component: lazyRouteComponent(() => import('../phone/round/RoundPage.tsx'), 'RoundPage'),
});
const season = createRoute({
  getParentRoute,
  path: '/season',
  validateSearch: seasonSearch,
  component: lazyRouteComponent(() => import('../desk/season/SeasonPage.tsx'), 'SeasonPage'),
});
const rounds = createRoute({
  getParentRoute,
  path: '/rounds',
  component: lazyRouteComponent(() => import('../desk/rounds/RoundsPage.tsx'), 'RoundsPage'),
});
const bulletin = createRoute({
  getParentRoute,
  path: '/bulletin',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/bulletin/BulletinPage.tsx'), 'BulletinPage'),
});
const sheet = createRoute({
  getParentRoute,
  path: '/sheet',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/sheet/WeekSheetPage.tsx'), 'WeekSheetPage'),
});
const counts = createRoute({
  getParentRoute,
  path: '/rounds/counts',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/counts/CountsPage.tsx'), 'CountsPage'),
});
const scouting = createRoute({
  getParentRoute,
  path: '/rounds/scouting',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/scouting/ScoutingPage.tsx'), 'ScoutingPage'),
});
const plan = createRoute({
  getParentRoute,
  path: '/fields/$fieldId/scouting/$insect',
  validateSearch: planSearch,
  component: lazyRouteComponent(() => import('../desk/scouting/PlanPage.tsx'), 'PlanPage'),
});
const scout = createRoute({
  getParentRoute,
  path: '/scout',
  validateSearch: scoutSearch,
  search: { middlewares: [withoutDay] },
  component: lazyRouteComponent(() => import('../phone/scouting/ScoutPage.tsx'), 'ScoutPage'),
});
const people = createRoute({
  getParentRoute,
  path: '/program/people',
  component: lazyRouteComponent(() => import('../desk/people/PeoplePage.tsx'), 'PeoplePage'),
});
const settings = createRoute({
  getParentRoute,
  path: '/program/settings',
  component: lazyRouteComponent(() => import('../desk/settings/SettingsPage.tsx'), 'SettingsPage'),
});
const rules = createRoute({
  getParentRoute,
  path: '/program/rules',
  component: lazyRouteComponent(() => import('../desk/rules/RulesPage.tsx'), 'RulesPage'),
});
const weather = createRoute({
  getParentRoute,
  path: '/program/weather',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../desk/weather/WeatherPage.tsx'), 'WeatherPage'),
});
const data = createRoute({
  getParentRoute,
  path: '/program/data',
  component: lazyRouteComponent(() => import('../desk/data/DataPage.tsx'), 'DataPage'),
});
const start = createRoute({
  getParentRoute,
  path: '/start',
  beforeLoad: async ({ context: { queries } }) => {
    const session = await queries.ensureQueryData(sessionQuery).catch(() => null);
    const role = session?.person?.role;
    throw redirect({ to: role && !isWide() ? firstPlace(role) : '/', replace: true });
  },
});
const record = createRoute({
  getParentRoute,
  path: '/record',
  validateSearch: recordSearch,
  component: lazyRouteComponent(() => import('../phone/record/RecordPage.tsx'), 'RecordPage'),
});
const more = createRoute({
  getParentRoute,
  path: '/more',
  component: lazyRouteComponent(() => import('./MorePage.tsx'), 'MorePage'),
});
const importing = createRoute({
  getParentRoute,
  path: '/program/data/import',
  component: lazyRouteComponent(() => import('../desk/import/ImportPage.tsx'), 'ImportPage'),
});
const help = createRoute({
  getParentRoute,
  path: '/help',
  component: lazyRouteComponent(() => import('../desk/help/HelpPage.tsx'), 'HelpPage'),
});
const signIn = createRoute({
  getParentRoute,
  path: '/sign-in',
  component: lazyRouteComponent(() => import('../door/SignInPage.tsx'), 'SignInPage'),
});
const first = createRoute({
  getParentRoute,
  path: '/first',
  component: lazyRouteComponent(() => import('../door/FirstPersonPage.tsx'), 'FirstPersonPage'),
});
const join = createRoute({
  getParentRoute,
  path: '/join/$token',
  component: lazyRouteComponent(() => import('../door/JoinPage.tsx'), 'JoinPage'),
});

/** Where a page stood before: links that people kept lead on, with all that they say after the path. */
const moved = <From extends string>(
  from: From,
  to: '/fields' | '/rounds/scouting' | '/season/review' | '/program/people' | '/program/settings',
) =>
  createRoute({
    getParentRoute,
    path: from,
    validateSearch: (raw: RawSearch) => raw,
    beforeLoad: ({ search }) => {
      throw redirect({ to, search, hash: true, replace: true });
    },
  });
const MOVED = [
  moved('/traps', '/fields'),
  moved('/scouting', '/rounds/scouting'),
  moved('/learn', '/season/review'),
  moved('/people', '/program/people'),
  moved('/settings', '/program/settings'),
] as const;

const WeekPage = lazyRouteComponent(() => import('../desk/week/WeekPage.tsx'), 'WeekPage');
const OwnFieldsPage = lazyRouteComponent(() => import('../phone/grower/OwnFieldsPage.tsx'), 'OwnFieldsPage');
/** On a phone, growers begin at their own fields. */
const hasOwnFields = (role: Role | undefined) => role === 'grower' && !isWide();

/** This week, or what a grower sees of it on a phone. */
function Home() {
  const role = useQuery(sessionQuery).data?.person?.role;
  const wide = useWide();
  return role === 'grower' && !wide ? <OwnFieldsPage /> : <WeekPage />;
}

/** The round and scouting fill a phone by themselves and load nothing else; every other page stands in the shell. */
function Root() {
  useKeptHere();
  if (useLocation({ select: ({ pathname }) => OF_THE_PHONE.includes(pathname) })) return <Outlet />;
  return (
    <Suspense>
      <Shell />
    </Suspense>
  );
}

export const routerOver = (queries: QueryClient) =>
  createRouter({
    context: { queries },
    routeTree: root.addChildren([
      week,
      field,
      flights,
      traps,
      trap,
      map,
      review,
      questions,
      conflicts,
      round,
      rounds,
      season,
      bulletin,
      sheet,
      counts,
      scouting,
      plan,
      scout,
      people,
      rules,
      weather,
      data,
      importing,
      settings,
      start,
      record,
      more,
      help,
      signIn,
      first,
      join,
      ...MOVED,
    ]),
    parseSearch,
    stringifySearch,
    scrollRestoration: true,
    defaultErrorComponent: ({ error, reset }) => <Failure kind="broken" error={error} again={reset} />,
  });

declare module '@tanstack/react-router' {
  interface Register {
    router: ReturnType<typeof routerOver>;
  }
}
