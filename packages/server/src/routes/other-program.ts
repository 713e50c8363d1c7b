import { z } from 'zod';
import { COORDINATOR, EVERY_ROLE } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

/** Beside one's own program the invented demo, beside the demo one's own: never in one database, nor at one address. */
export interface OtherProgram {
  readonly kind: 'own' | 'demo';
  /** Opens it, where it is not open yet, and says on which port of this machine. */
  open(): Promise<number>;
}

const kind = z.enum(['own', 'demo']);

export const otherProgramRoutes =
  (other: OtherProgram | null): Route =>
  (app) => {
    app.get(
      '/api/other-program',
      {
        config: { allow: EVERY_ROLE },
        schema: {
          operationId: 'getOtherProgram',
          tags: ['program'],
          summary: 'Which other program this machine can open',
          response: { 200: z.object({ kind: kind.nullable().describe('null: none; who signs in shares this one.') }) },
        },
      },
      async () => ({ kind: other?.kind ?? null }),
    );

    app.post(
      '/api/other-program',
      {
        config: { allow: COORDINATOR },
        schema: {
          operationId: 'openOtherProgram',
          tags: ['program'],
          summary: 'Open the other program of this machine',
          response: { 200: z.object({ port: z.int().describe('Where it is, on the host of this one.') }), 404: problems },
        },
      },
      async (_request, reply) =>
        other === null
          ? refuse(reply, 404, {
              where: {},
              got: 'a request for another program',
              expected: 'a server that has one',
              fix: 'Start Duskwatch without --accounts on the machine you sit at.',
            })
          : { port: await other.open() },
    );
  };
