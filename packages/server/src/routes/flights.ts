import {
  type FarmFlights,
  type FlightCache,
  fieldFlightsSchema,
  fieldFlightsView,
  flightRowsSchema,
  formatDay,
  programFlights,
} from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { noSuchField } from '../problems.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

/** How long one answer may fit flights before it tells how far it has come, so that others are served in between. */
const SLICE_MS = 150;
/** Trap-seasons whose fits are kept; a fit is known by all it rests on, so old ones are only in the way. */
const FITS_KEPT = 5_000;

export const flightsRoute: Route = (app, { reader, dayFor }) => {
  const cache: FlightCache = new Map();
  const dropOldest = () => {
    for (const key of cache.keys()) {
      if (cache.size <= FITS_KEPT) return;
      cache.delete(key);
    }
  };

  app.get(
    '/api/flights',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'listFlights',
        tags: ['flights'],
        summary: 'Where each insect is in its flight, farm by farm: some rows at a time, as they are fitted',
        querystring: asOf.extend({ from: z.coerce.number().int().min(0).default(0).describe('The row to begin at.') }),
        response: { 200: flightRowsSchema, 400: problems },
      },
    },
    async (request) => {
      const prepared = await reader.prepared(personOf(request), await dayFor(request.query.on));
      const until = performance.now() + SLICE_MS;
      const rows: FarmFlights[] = [];
      let [of, next] = [0, null as number | null];
      for (const fitted of programFlights(prepared, cache, request.query.from)) {
        rows.push(fitted.row);
        of = fitted.of;
        next = fitted.next < of ? fitted.next : null;
        if (performance.now() > until) break;
      }
      dropOldest();
      return { on: formatDay(prepared.on), of, next, rows };
    },
  );

  app.get(
    '/api/fields/:fieldId/flights',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getFieldFlights',
        tags: ['flights'],
        summary: 'One field: flights fitted to its catch, dates to come, and the larvae of the moths caught',
        params: z.object({ fieldId: z.string().describe('field_id') }),
        querystring: asOf,
        response: { 200: fieldFlightsSchema, 400: problems, 404: problems },
      },
    },
    async (request, reply) => {
      const { fieldId } = request.params;
      const prepared = await reader.prepared(personOf(request), await dayFor(request.query.on));
      const view = fieldFlightsView(prepared, fieldId, cache);
      dropOldest();
      if (view) return view;
      return noSuchField(reply, fieldId);
    },
  );
};
