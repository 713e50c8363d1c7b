import { createRootRoute, createRoute, createRouter, lazyRouteComponent, Outlet, useLocation } from '@tanstack/react-router';
import { roundSearch } from '../round/search.ts';
import { Failure } from './Failure.tsx';
import { Shell } from './Shell.tsx';
import { daySearch, parseSearch, stringifySearch, weekSearch } from './search.ts';

const root = createRootRoute({ component: Root, notFoundComponent: () => <Failure kind="noPage" /> });
const week = createRoute({
  getParentRoute: () => root,
  path: '/',
  validateSearch: weekSearch,
  component: lazyRouteComponent(() => import('../week/WeekPage.tsx'), 'WeekPage'),
});
const field = createRoute({
  getParentRoute: () => root,
  path: '/fields/$fieldId',
  validateSearch: daySearch,
  component: lazyRouteComponent(() => import('../field/FieldPage.tsx'), 'FieldPage'),
});
const round = createRoute({
  getParentRoute: () => root,
  path: '/round',
  validateSearch: roundSearch,
  component: lazyRouteComponent(() => import('../round/RoundPage.tsx'), 'RoundPage'),
});

/** The round fills a phone by itself; every other page stands in the shell. */
function Root() {
  return useLocation().pathname === '/round' ? <Outlet /> : <Shell />;
}

export const router = createRouter({
  routeTree: root.addChildren([week, field, round]),
  parseSearch,
  stringifySearch,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
