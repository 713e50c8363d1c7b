import { createRootRoute, createRoute, createRouter } from '@tanstack/react-router';
import { FieldPage } from '../field/FieldPage.tsx';
import { WeekPage } from '../week/WeekPage.tsx';
import { Failure } from './Failure.tsx';
import { Shell } from './Shell.tsx';
import { daySearch, parseSearch, stringifySearch, weekSearch } from './search.ts';

const root = createRootRoute({ component: Shell, notFoundComponent: () => <Failure kind="noPage" /> });
const week = createRoute({ getParentRoute: () => root, path: '/', validateSearch: weekSearch, component: WeekPage });
const field = createRoute({
  getParentRoute: () => root,
  path: '/fields/$fieldId',
  validateSearch: daySearch,
  component: FieldPage,
});

export const router = createRouter({
  routeTree: root.addChildren([week, field]),
  parseSearch,
  stringifySearch,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
