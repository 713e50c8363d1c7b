import { uuidv7 } from '@duskwatch/store';
import { expect, it, onTestFinished } from 'vitest';
import { served } from '../people/served.testing.ts';
import { smallProgram } from '../small-program.testing.ts';

const READING = { kind: 'counts', traps: 1, checks: 1, insects: [], from: null, to: null, words: [], days: 1 } as const;
const [CHECK] = smallProgram().checks;
const [TRAP] = smallProgram().traps;

const bring = (records: object) => ({ importId: uuidv7(), file: 'counts.csv', reading: READING, match: null, records });

/** One that real records may join. */
const ownProgram = () => ({ ...smallProgram(), settings: { ...smallProgram().settings, invented: false } });

async function begun(program = ownProgram()) {
  const server = await served(program);
  onTestFinished(server.stop);
  return { server, ida: await server.ida() };
}

it('brings in nothing of a file when one row of it is wrong, and names the row', async () => {
  const { ida } = await begun();
  const before = (await ida.get('/api/records/checks')).json();
  const refused = await ida.post(
    '/api/imports',
    bring({
      checks: [
        { ...CHECK, checkedOn: '2026-07-13' },
        { ...CHECK, trapId: 'nobodys' },
        { ...CHECK, checkedOn: '2031-01-01' },
      ],
    }),
  );
  expect(refused.statusCode).toBe(409);
  expect(refused.json().problems).toMatchObject([
    { where: { file: 'checks', row: 2, column: 'trap_id' } },
    { where: { file: 'checks', row: 3, column: 'checked_on' }, expected: expect.stringContaining('a day up to') },
  ]);
  expect((await ida.get('/api/records/checks')).json()).toEqual(before);
});

it('mixes nothing into an invented program', async () => {
  const { ida } = await begun(smallProgram());
  const refused = await ida.post('/api/imports', bring({ checks: [{ ...CHECK, checkedOn: '2026-07-13' }] }));
  expect(refused.statusCode).toBe(409);
  expect(refused.json().problems[0]).toMatchObject({ got: 'a program that is invented, to try things on' });
});

it('takes nothing back that people have built on since', async () => {
  const { ida } = await begun();
  const trap = { ...TRAP, trapId: 'brought', station: 'brought' };
  const file = bring({ traps: [trap] });
  expect((await ida.post('/api/imports', file)).statusCode).toBe(200);
  const revisionId = uuidv7();
  const value = { ...CHECK, trapId: 'brought' };
  await ida.post('/api/revisions', {
    revisions: [{ revisionId, recordId: revisionId, kind: 'checks', baseRevisionId: null, at: '2026-07-15T05:00:00Z', value }],
  });
  const refused = await ida.post(`/api/imports/${file.importId}/undo`, {});
  expect(refused.statusCode).toBe(409);
  expect(refused.json().problems[0]).toMatchObject({ where: { file: 'checks' }, got: 'brought' });
  expect((await ida.get('/api/traps')).body).toContain('brought');
});
