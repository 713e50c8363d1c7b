import { createHash } from 'node:crypto';
import { type RoundPlace, type RoundWay, roundAlong, roundPlace, roundSchema, roundStops } from '@duskwatch/core';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

/** Driving orders kept, each for the stations it leads past and which of them are due. */
const WAYS_KEPT = 50;

export const roundRoute: Route = (app, { reader, work, dayFor }) => {
  const ways = new Map<string, Promise<RoundWay>>();

  /** The order is worked out once for the same stations, whoever asks, on whatever day. */
  function wayPast(places: readonly RoundPlace[]): Promise<RoundWay> {
    const key = createHash('sha256').update(JSON.stringify(places)).digest('base64');
    const found = ways.get(key) ?? work.run({ kind: 'way', places }, null);
    ways.delete(key);
    ways.set(key, found);
    found.catch(() => ways.delete(key));
    if (ways.size > WAYS_KEPT) ways.delete(ways.keys().next().value!);
    return found;
  }

  app.get(
    '/api/round',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'getRound',
        tags: ['rounds'],
        summary: 'The round: every station with a trap hanging, in driving order, complete enough to work without signal',
        querystring: asOf,
        response: { 200: roundSchema, 400: problems },
      },
    },
    async (request) => {
      const person = personOf(request);
      const on = await dayFor(request.query.on);
      return reader.kept(person, `round ${on}`, async () => {
        const prepared = await reader.prepared(person, on);
        const stops = roundStops(prepared);
        return roundAlong(prepared, stops, await wayPast(stops.map(roundPlace)));
      });
    },
  );
};
