import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { notFound, refuse } from './problems.ts';

const YEAR_S = 31_536_000;

/**
 * Serves the built app. Addresses that name no file are the app's own pages, so they get its one document. Files
 * under assets/ carry a hash of their content in the name and may be kept for ever; the rest is asked for anew.
 */
export function serveWeb(app: FastifyInstance, webRoot: string): void {
  const built = existsSync(join(webRoot, 'index.html'));
  if (built) {
    app.register(fastifyStatic, {
      root: webRoot,
      cacheControl: false,
      preCompressed: true,
      dotfiles: 'ignore',
      setHeaders: (response, path) => {
        const hashed = path.startsWith(join(webRoot, 'assets'));
        response.header('cache-control', hashed ? `public, max-age=${YEAR_S}, immutable` : 'no-cache');
      },
    });
  }
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split('?')[0]!;
    const isPage = (request.method === 'GET' || request.method === 'HEAD') && !isUnder('/api', path) && !isUnder('/assets', path);
    if (!isPage) return notFound(request, reply);
    if (built) return reply.sendFile('index.html');
    return refuse(reply, 404, {
      where: { file: join(webRoot, 'index.html') },
      got: 'no file',
      expected: 'the built app',
      fix: 'run: npm run setup',
    });
  });
}

const isUnder = (folder: string, path: string) => path === folder || path.startsWith(`${folder}/`);
