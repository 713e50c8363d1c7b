import type { IsoDay, Problem } from '@duskwatch/core';
import { rememberReading } from './read-at.ts';

/** Why the page has no data, told apart because each asks something else of the reader. */
export type ApiFailure = 'unreachable' | 'signed-out' | 'forbidden' | 'not-found' | 'refused' | 'failed';

export class ApiError extends Error {
  readonly kind: ApiFailure;
  /** Of the answer; null when there was none. */
  readonly status: number | null;
  readonly problems: readonly Problem[];
  /** Seconds to wait before another attempt, where the server says so. */
  readonly waitS: number | null;

  constructor(
    kind: ApiFailure,
    message: string,
    answer: { status: number; problems: readonly Problem[]; waitS: number | null } | null = null,
  ) {
    super(message);
    this.kind = kind;
    this.status = answer?.status ?? null;
    this.problems = answer?.problems ?? [];
    this.waitS = answer?.waitS ?? null;
  }
}

export const failureOf = (error: unknown): ApiFailure => (error instanceof ApiError ? error.kind : 'failed');

function failureBehind(status: number): ApiFailure {
  if (status === 401) return 'signed-out';
  if (status === 403) return 'forbidden';
  if (status === 404) return 'not-found';
  // A proxy in front of a server that is down answers for it.
  if (status === 502 || status === 503 || status === 504) return 'unreachable';
  return status < 500 ? 'refused' : 'failed';
}

/** A path that is answered as known on a day; without one, on the day that is read. */
export const dated = (path: string, on: IsoDay | undefined): string => (on ? `${path}?on=${on}` : path);

/** @param heard told of the answer itself, for what stands in its head */
export async function getJson<T>(path: string, signal: AbortSignal, heard?: (response: Response) => void): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, { signal, headers: { accept: 'application/json' } });
  } catch (error) {
    if (signal.aborted) throw error;
    throw new ApiError('unreachable', String(error));
  }
  heard?.(response);
  if (!response.ok) throw await errorOf(response);
  const answer = (await response.json()) as T;
  rememberReading(answer, response);
  return answer;
}

/** Asks the server to do something, which only it can. Gives what it answers; null for an answer without content. */
export async function send<T>(method: 'POST' | 'PATCH' | 'DELETE', path: string, body?: unknown): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      headers: { accept: 'application/json', ...(body !== undefined && { 'content-type': 'application/json' }) },
      // Much is written out where it was made, and not on the page's own thread.
      ...(body !== undefined && { body: body instanceof Blob ? body : JSON.stringify(body) }),
    });
  } catch (error) {
    throw new ApiError('unreachable', String(error));
  }
  if (!response.ok) throw await errorOf(response);
  return (response.status === 204 ? null : await response.json()) as T;
}

/** Asks for a file: with a body by POST, else by GET. */
export async function sendForFile(path: string, body: unknown): Promise<Blob> {
  let response: Response;
  try {
    const json = { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
    response = await fetch(path, body === null ? {} : json);
  } catch (error) {
    throw new ApiError('unreachable', String(error));
  }
  if (!response.ok) throw await errorOf(response);
  return response.blob();
}

/**
 * A file that the server makes while it sends it, under the name it gives.
 * @param heard told of the bytes that have come so far
 */
export async function getFile(path: string, signal: AbortSignal, heard: (bytes: number) => void): Promise<File> {
  let response: Response;
  const parts: BlobPart[] = [];
  try {
    response = await fetch(path, { signal });
    if (response.ok) {
      let bytes = 0;
      const reader = response.body!.getReader();
      for (let next = await reader.read(); !next.done; next = await reader.read()) {
        parts.push(next.value);
        bytes += next.value.length;
        heard(bytes);
      }
    }
  } catch (error) {
    if (signal.aborted) throw error;
    throw new ApiError('unreachable', String(error));
  }
  if (!response.ok) throw await errorOf(response);
  const name = /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1] ?? 'duskwatch';
  return new File(parts, name, { type: response.headers.get('content-type') ?? '' });
}

async function errorOf(response: Response): Promise<ApiError> {
  return errorIn(response.status, await response.text(), Number(response.headers.get('retry-after')) || null);
}

/** What an answer that is a refusal says. */
export const errorIn = (status: number, text: string, waitS: number | null): ApiError =>
  new ApiError(failureBehind(status), text, { status, problems: problemsIn(text), waitS });

function problemsIn(text: string): readonly Problem[] {
  try {
    const said = (JSON.parse(text) as { problems?: readonly Problem[] }).problems;
    return Array.isArray(said) ? said : [];
  } catch {
    return [];
  }
}
