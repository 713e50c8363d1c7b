import type { Route } from './route.ts';

export const openApiRoute: Route = (app) => {
  app.get('/api/openapi.json', { config: { allow: 'anyone' }, schema: { hide: true } }, async () => app.swagger());
};
