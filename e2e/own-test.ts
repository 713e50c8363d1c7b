/** Tests that write, on programs of their own. */
import { type OwnServer, startServer } from './own-server.ts';
import { test as base } from './page.ts';

/** Those that one worker runs share one. */
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

/** Each has one for itself. */
export const freshTest = base.extend<{ server: OwnServer }>({
  server: async ({ playwright: _ }, use) => {
    const server = await startServer();
    await use(server);
    await server.stop();
  },
  baseURL: async ({ server }, use) => use(server.url),
});
