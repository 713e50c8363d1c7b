import type { Route } from './route.ts';

export const openApiRoute: Route = (app) => {
  app.get('/api/openapi.json', { schema: { hide: true } }, async () => app.swagger());
};
