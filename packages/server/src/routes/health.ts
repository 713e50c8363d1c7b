import { z } from 'zod';
import type { Route } from './route.ts';

export const healthRoute: Route = (app, { reader }) => {
  app.get(
    '/api/health',
    {
      config: { allow: 'anyone' },
      schema: {
        operationId: 'getHealth',
        tags: ['server'],
        summary: 'Whether the server runs and can read its program',
        response: { 200: z.object({ status: z.literal('ok') }) },
      },
    },
    async () => {
      await reader.everything();
      return { status: 'ok' as const };
    },
  );
};
