import { uuidv7 } from '@duskwatch/store';
import { expect, it, onTestFinished } from 'vitest';
import { type Browser, served } from './served.testing.ts';
import { OTHER, OWN, twoFarms } from './two-farms.testing.ts';

const JPEG = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from('a larva in a silk')]);

it('a grower keeps a photo with a sample of the own field; another farm’s grower never sees it', async () => {
  const server = await served(twoFarms);
  onTestFinished(server.stop);
  const ida = await server.ida();
  const { browser: alder } = await server.join(ida, 'Al Derwent', 'grower', OWN);
  const { browser: birch } = await server.join(ida, 'Bi Rowan', 'grower', OTHER);
  const kept = await server.app.inject({
    method: 'POST',
    url: '/api/photos',
    payload: JPEG,
    headers: { host: 'localhost:80', origin: 'http://localhost:80', cookie: alder.cookie!, 'content-type': 'image/jpeg' },
  });
  const { photo } = kept.json<{ photo: string }>();
  const seen = async (browser: Browser) => (await browser.get(`/api/photos/${photo}`)).statusCode;
  // Until a record names it, it is nobody's.
  expect([await seen(alder), await seen(ida)]).toEqual([404, 404]);
  const [sample] = twoFarms.samples.filter(({ fieldId }) => fieldId === 'alder-1');
  const revisionId = uuidv7();
  const value = { ...sample, sampledOn: '2026-07-14', photo };
  const revision = { revisionId, recordId: revisionId, kind: 'samples', baseRevisionId: null, at: '2026-07-15T05:00:00Z', value };
  expect((await alder.post('/api/revisions', { revisions: [revision] })).json()).toMatchObject({
    added: [revisionId],
    refused: [],
  });
  expect([await seen(alder), await seen(ida), await seen(birch)]).toEqual([200, 200, 404]);
  const field = (await alder.get('/api/fields/alder-1')).json();
  const photos = field.insects.flatMap(({ samples }: { samples: { photo: string | null }[] }) => samples.map((one) => one.photo));
  expect(photos).toContain(photo);
});
