/** Driving times from a routing service that the person who runs the server has chosen (the OSRM HTTP API, `table`). */
import { ok, type Problem, type Result, refuse, type TravelTable } from '@duskwatch/core';
import { z } from 'zod';

export interface Place {
  readonly id: string;
  readonly latitude: number;
  readonly longitude: number;
}

const PATIENCE_MS = 20_000;
/** Degrees to about a metre: a service learns no more of a place than it needs. */
const DECIMALS = 5;

const answer = z.object({ code: z.string(), durations: z.array(z.array(z.number().nullable())).optional() });

/** Its address, without what comes after the host and path; null when it is none that begins with http. */
export function drivingTimesAddress(written: string): string | null {
  if (!URL.canParse(written)) return null;
  const { protocol, username, search, hash, href } = new URL(written);
  if (!/^https?:$/.test(protocol) || username !== '' || search !== '' || hash !== '') return null;
  return href.replace(/\/+$/, '');
}

/** Minutes between all places, as the service says. */
export async function askDrivingTimes(address: string, places: readonly Place[]): Promise<Result<TravelTable>> {
  const at = places.map(({ latitude, longitude }) => `${longitude.toFixed(DECIMALS)},${latitude.toFixed(DECIMALS)}`).join(';');
  let said: z.infer<typeof answer>;
  try {
    const response = await fetch(`${address}/table/v1/driving/${at}?annotations=duration`, {
      redirect: 'error',
      signal: AbortSignal.timeout(PATIENCE_MS),
      headers: { accept: 'application/json' },
    });
    said = answer.parse(await response.json());
  } catch (error) {
    return refuse(problem(`no answer from ${new URL(address).host}: ${(error as Error).name}`));
  }
  const minutes = (said.durations ?? []).map((row) => row.map((seconds) => (seconds === null ? Number.NaN : seconds / 60)));
  if (said.code !== 'Ok' || minutes.length !== places.length || minutes.some((row) => row.length !== places.length))
    return refuse(problem(`the answer ${said.code}`));
  for (const [row, from] of places.entries()) {
    const column = minutes[row]!.findIndex(Number.isNaN);
    if (column >= 0) return refuse(problem(`no way from ${from.id} to ${places[column]!.id}`));
  }
  return ok({ ids: places.map(({ id }) => id), minutes });
}

const problem = (got: string): Problem => ({
  where: {},
  got,
  expected: 'driving times between all stations',
  fix: 'plan by great circles or by a table of your own, and ask who runs the server',
});
