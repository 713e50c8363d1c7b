/** A server with accounts and the demo, and invented people in each role on it. */
import type { APIRequestContext } from '@playwright/test';
import type { Person, Role } from '../packages/core/src/index.ts';
import { FIRST_CODE, startServer } from './own-server.ts';

export const PASSWORD = 'herons over wet clover';

export async function startWithAccounts() {
  const server = await startServer('--accounts');
  const origin = { origin: server.url };
  const post = async <T>(request: APIRequestContext, path: string, data: object): Promise<T> => {
    const answer = await request.post(`${server.url}${path}`, { data, headers: origin });
    if (!answer.ok()) throw new Error(`${path}: ${answer.status()} ${await answer.text()}`);
    return answer.json() as Promise<T>;
  };
  return {
    ...server,
    /** The code for the first person, as the terminal shows it. */
    code: () => FIRST_CODE.exec(server.printed())?.[0] ?? '',
    /** Whoever `request` is signed in as must be a coordinator. Gives the path of the link. */
    invite: async (request: APIRequestContext, role: Role, farms: readonly string[] = []) =>
      (await post<{ path: string }>(request, '/api/invitations', { role, farms })).path,
    first: (request: APIRequestContext, name: string, code: string) =>
      post<{ person: Person }>(request, '/api/first-person', { code, name, password: PASSWORD }),
    join: (request: APIRequestContext, path: string, name: string) =>
      post<{ person: Person }>(request, '/api/invitations/accept', { token: path.split('/').at(-1)!, name, password: PASSWORD }),
    signIn: (request: APIRequestContext, name: string) =>
      post<{ person: Person }>(request, '/api/session', { name, password: PASSWORD }),
  };
}
