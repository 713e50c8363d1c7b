import { FETCH_TROUBLES } from '@duskwatch/store';
import { z } from 'zod';
import { COORDINATOR } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import type { RecordsContext, RecordsRoute } from '../records/context.ts';
import { problems } from '../schemas/common.ts';

const instant = z.iso.datetime();

const fetchState = z
  .object({
    sourceId: z.string(),
    triedAt: instant.describe('Last attempt.'),
    answeredAt: instant.nullable().describe('Last attempt that was answered; null: none was.'),
    nextAt: instant.describe('Not asked again before.'),
    failures: z.int().describe('Attempts in vain since the last answer.'),
    trouble: z
      .object({ kind: z.enum(FETCH_TROUBLES), detail: z.string() })
      .nullable()
      .describe('What was wrong with the last attempt; null: nothing.'),
    days: z.int().describe('Days that the last answer held.'),
  })
  .meta({ id: 'WeatherFetch' });

export const weatherFetchingRoute: RecordsRoute = (app, { fetcher }: RecordsContext) => {
  app.get(
    '/api/weather-fetching',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'getWeatherFetching',
        tags: ['program'],
        summary: 'How fetching the days of each weather source has gone',
        response: { 200: z.object({ folder: z.string(), states: z.array(fetchState) }) },
      },
    },
    async () => ({ folder: fetcher.folder, states: (await fetcher.states()).map(shown) }),
  );

  app.post(
    '/api/weather-fetching/:sourceId',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'fetchWeather',
        tags: ['program'],
        summary: 'Fetch the days of a weather source now, unless its service asks for patience',
        params: z.object({ sourceId: z.string() }),
        response: { 200: fetchState, 400: problems, 409: problems },
      },
    },
    async (request, reply) => {
      const done = await fetcher.fetchNow(request.params.sourceId);
      return done.ok ? shown(done.value) : refuse(reply, 409, ...done.problems);
    },
  );
};

/** What the services said of their answers is nobody’s business, and an address may hold a key. */
const shown = <T extends { readonly validators: unknown; readonly mustWait: boolean }>({
  validators: _validators,
  mustWait: _mustWait,
  ...state
}: T) => state;
