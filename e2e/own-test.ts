/** Tests that write: those that one worker runs share a program of their own. */
import { type OwnServer, startServer } from './own-server.ts';
import { test as base } from './page.ts';

export const test = base.extend<object, { server: OwnServer }>({
  server: [
    async ({ playwright: _ }, use) => {
      const server = await startServer();
      await use(server);
      await server.stop();
    },
    { scope: 'worker' },
  ],
  baseURL: async ({ server }, use) => use(server.url),
});
