import type { QueryClient } from '@tanstack/react-query';
import {
  createRootRouteWithContext,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  useLocation,
} from '@tanstack/react-router';
import { Suspense } from 'react';
import { weekQuery } from '../api/queries.ts';
import { sessionQuery } from '../api/session.ts';
import { learnSearch } from '../learn/search.ts';
import { mapSearch } from '../map/search.ts';
import { roundSearch } from '../round/search.ts';
import { scoutSearch } from '../scout/search.ts';
import { planSearch } from '../scouting/search.ts';
import { seasonSearch } from '../season/search.ts';
import { stationsSearch } from '../stations/search.ts';
import { Failure } from './Failure.tsx';
import { daySearch, parseSearch, stringifySearch, weekSearch } from './search.ts';

const OF_THE_PHONE: readonly string[] = ['/round', '/scout'];
const Shell = lazyRouteComponent(() => import('./Shell.tsx'), 'Shell');

const root = createRootRouteWithContext<{ readonly queries: QueryClient }>()({
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
      ({ person }) => person && queries.prefetchQuery(weekQuery(on)),
      () => null,
    );
  },
  component: lazyRouteComponent(() => import('../week/WeekPage.tsx'), 'WeekPage'),
});
const field = createRoute({
  getParentRoute,
  path: '/fields/$fieldId',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../field/FieldPage.tsx'), 'FieldPage'),
});
const flights = createRoute({
  getParentRoute,
  path: '/flights',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../flights/FlightsPage.tsx'), 'FlightsPage'),
});
const traps = createRoute({
  getParentRoute,
  path: '/traps',
  validateSearch: stationsSearch,
  component: lazyRouteComponent(() => import('../stations/StationsPage.tsx'), 'StationsPage'),
});
const trap = createRoute({
  getParentRoute,
  path: '/traps/$trapId',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../stations/TrapPage.tsx'), 'TrapPage'),
});
const map = createRoute({
  getParentRoute,
  path: '/map',
  validateSearch: mapSearch,
  component: lazyRouteComponent(() => import('../map/MapPage.tsx'), 'MapPage'),
});
const learn = createRoute({
  getParentRoute,
  path: '/learn',
  validateSearch: learnSearch,
  component: lazyRouteComponent(() => import('../learn/LearnPage.tsx'), 'LearnPage'),
});
const questions = createRoute({
  getParentRoute,
  path: '/questions',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../questions/QuestionsPage.tsx'), 'QuestionsPage'),
});
const conflicts = createRoute({
  getParentRoute,
  path: '/conflicts',
  component: lazyRouteComponent(() => import('../history/ConflictsPage.tsx'), 'ConflictsPage'),
});
const round = createRoute({
  getParentRoute,
  path: '/round',
  validateSearch: roundSearch,
  component: lazyRouteComponent(() => import('../round/RoundPage.tsx'), 'RoundPage'),
});
const season = createRoute({
  getParentRoute,
  path: '/season',
  validateSearch: seasonSearch,
  component: lazyRouteComponent(() => import('../season/SeasonPage.tsx'), 'SeasonPage'),
});
const rounds = createRoute({
  getParentRoute,
  path: '/rounds',
  component: lazyRouteComponent(() => import('../rounds/RoundsPage.tsx'), 'RoundsPage'),
});
const scouting = createRoute({
  getParentRoute,
  path: '/scouting',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../scouting/ScoutingPage.tsx'), 'ScoutingPage'),
});
const plan = createRoute({
  getParentRoute,
  path: '/fields/$fieldId/scouting/$insect',
  validateSearch: planSearch,
  component: lazyRouteComponent(() => import('../scouting/PlanPage.tsx'), 'PlanPage'),
});
const scout = createRoute({
  getParentRoute,
  path: '/scout',
  validateSearch: scoutSearch,
  component: lazyRouteComponent(() => import('../scout/ScoutPage.tsx'), 'ScoutPage'),
});
const people = createRoute({
  getParentRoute,
  path: '/people',
  component: lazyRouteComponent(() => import('../people/PeoplePage.tsx'), 'PeoplePage'),
});
const settings = createRoute({
  getParentRoute,
  path: '/settings',
  component: lazyRouteComponent(() => import('../settings/SettingsPage.tsx'), 'SettingsPage'),
});
const signIn = createRoute({
  getParentRoute,
  path: '/sign-in',
  component: lazyRouteComponent(() => import('../people/SignInPage.tsx'), 'SignInPage'),
});
const first = createRoute({
  getParentRoute,
  path: '/first',
  component: lazyRouteComponent(() => import('../people/FirstPersonPage.tsx'), 'FirstPersonPage'),
});
const join = createRoute({
  getParentRoute,
  path: '/join/$token',
  component: lazyRouteComponent(() => import('../people/JoinPage.tsx'), 'JoinPage'),
});

/** The round and scouting fill a phone by themselves and load nothing else; every other page stands in the shell. */
function Root() {
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
      learn,
      questions,
      conflicts,
      round,
      rounds,
      season,
      scouting,
      plan,
      scout,
      people,
      settings,
      signIn,
      first,
      join,
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
