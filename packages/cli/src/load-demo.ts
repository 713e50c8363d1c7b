import type { Result } from '@duskwatch/core';
import type { Imported, Store } from '@duskwatch/store';
import { buildDemoProgram } from './demo/index.ts';

/** Whether nothing was ever written to the store: only then may the demo go in, so that it mixes with nothing. */
export async function isEmpty(store: Store): Promise<boolean> {
  return (await store.changesSince(0, 1)).length === 0;
}

export function loadDemo(store: Store): Promise<Result<Imported>> {
  return store.importProgram(buildDemoProgram(), { author: 'demo', at: new Date().toISOString() });
}

/** Whether the store holds a program to try things on, which nothing real may join. */
export const isInvented = async (store: Store): Promise<boolean> => {
  const [settings] = await store.current('settings');
  return settings?.value.invented === true;
};
