import { day, roundsView } from '@duskwatch/core';
import { askDrivingTimes } from '../driving-times.ts';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { problems } from '../schemas/common.ts';
import { drivingTimes, placesBody, roundsQuery, roundsToPlan } from '../schemas/rounds.ts';
import type { Route } from './route.ts';

export const roundsRoute: Route = (app, { reader, dayFor, drivingTimesAddress = null }) => {
  app.get(
    '/api/rounds',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'getRounds',
        tags: ['rounds'],
        summary: 'Stations whose traps fall due, to plan rounds past them',
        querystring: roundsQuery,
        response: { 200: roundsToPlan, 400: problems },
      },
    },
    async (request) => {
      const on = await dayFor(request.query.on);
      const prepared = await reader.prepared(personOf(request), on);
      const drivingTimesFrom = drivingTimesAddress && new URL(drivingTimesAddress).host;
      return { ...roundsView(prepared, day(request.query.until ?? on)), drivingTimesFrom };
    },
  );

  app.post(
    '/api/rounds/driving-times',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'askDrivingTimes',
        tags: ['rounds'],
        summary: 'Driving minutes between places, from the service that whoever runs this server has chosen',
        body: placesBody,
        response: { 200: drivingTimes, 400: problems, 404: problems, 502: problems },
      },
    },
    async (request, reply) => {
      if (drivingTimesAddress === null) {
        return refuse(reply, 404, {
          where: {},
          got: 'no service for driving times',
          expected: 'one that whoever runs this server has chosen',
          fix: 'start it with: duskwatch serve --driving-times https://router.example',
        });
      }
      const asked = await askDrivingTimes(drivingTimesAddress, request.body.places);
      if (!asked.ok) return refuse(reply, 502, ...asked.problems);
      return asked.value;
    },
  );
};
