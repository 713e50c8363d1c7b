import { photoSchema } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import type { RecordsRoute } from '../records/context.ts';
import { MAX_PHOTO_BYTES, PHOTO_TYPES, photoType } from '../records/photos.ts';
import { bytes, problems } from '../schemas/common.ts';

export const photosRoute: RecordsRoute = (app, { reader, photos }) => {
  app.register(async (scope) => {
    // Photos come as bytes, by whatever name: what they are is read off the bytes.
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser(/^image\//, { parseAs: 'buffer', bodyLimit: MAX_PHOTO_BYTES }, (_request, body, done) =>
      done(null, body),
    );

    scope.post(
      '/api/photos',
      {
        bodyLimit: MAX_PHOTO_BYTES,
        config: { allow: WITH_PLACES },
        schema: {
          operationId: 'keepPhoto',
          tags: ['records'],
          summary: `Keep a photo (${PHOTO_TYPES.join(', ')}; at most 4 MB); its name goes into a check or a sample`,
          response: { 200: z.object({ photo: photoSchema }), 400: problems, 415: problems },
        },
      },
      async (request, reply) => {
        const sent = request.body;
        if (!(sent instanceof Buffer) || photoType(sent) === null) {
          return refuse(reply, 400, {
            where: {},
            got: `${request.headers['content-type'] ?? 'bytes'} that begin like none of these`,
            expected: PHOTO_TYPES.join(', '),
            fix: 'Send the photo as the camera made it, or as a JPEG.',
            fault: { kind: 'photo-type', types: PHOTO_TYPES },
          });
        }
        return { photo: await photos.put(sent) };
      },
    );
  });

  app.get(
    '/api/photos/:photo',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getPhoto',
        tags: ['records'],
        summary: 'A photo',
        params: z.object({ photo: z.string() }),
        response: { 200: bytes('The photo.', ...PHOTO_TYPES), 404: problems },
      },
    },
    async (request, reply) => {
      const { photo } = request.params;
      // A photo is seen by whoever sees a check or a sample that names it; before that arrives, by nobody.
      const { checks, samples } = await reader.program(personOf(request));
      const seen = photoSchema.safeParse(photo).success && [...checks, ...samples].some((each) => each.photo === photo);
      const photoBytes = seen ? await photos.get(photo) : null;
      const type = photoBytes && photoType(photoBytes);
      if (!photoBytes || !type) {
        return refuse(reply, 404, {
          where: { parameter: 'photo' },
          got: photo,
          expected: 'the photo of a check or a sample',
          fix: 'it may still be on the phone that took it',
        });
      }
      return reply.type(type).header('content-security-policy', "default-src 'none'; sandbox").send(photoBytes);
    },
  );
};
