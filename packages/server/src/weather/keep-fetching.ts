import type { App } from '../routes/route.ts';
import type { WeatherFetcher } from './fetcher.ts';

/** Looks again and again whether days of weather are to be fetched, as long as the server runs; one look ends before the next begins. */
export function keepFetching(app: App, fetcher: WeatherFetcher, everyMs: number): void {
  let timer: NodeJS.Timeout | undefined;
  const stopping = new AbortController();
  let looking = Promise.resolve();
  const look = () => {
    looking = fetcher
      .fetchDue(stopping.signal)
      // What went wrong with a source is kept with it; this is a database that is away, and the next look may find it.
      .catch((error) => app.log.warn(error))
      .then(() => {
        if (stopping.signal.aborted) return;
        timer = setTimeout(look, everyMs);
        timer.unref();
      });
  };
  app.addHook('onListen', async () => look());
  app.addHook('onClose', async () => {
    stopping.abort();
    await looking;
    clearTimeout(timer);
  });
}
