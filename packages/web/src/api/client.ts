/** Why the page has no data, told apart because each asks something else of the reader. */
export type ApiFailure = 'unreachable' | 'not-found' | 'refused' | 'failed';

export class ApiError extends Error {
  readonly kind: ApiFailure;

  constructor(kind: ApiFailure, message: string) {
    super(message);
    this.kind = kind;
  }
}

function failureOf(status: number): ApiFailure {
  if (status === 404) return 'not-found';
  // A proxy in front of a server that is down answers for it.
  if (status === 502 || status === 503 || status === 504) return 'unreachable';
  return status < 500 ? 'refused' : 'failed';
}

export async function getJson<T>(path: string, signal: AbortSignal): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, { signal, headers: { accept: 'application/json' } });
  } catch (error) {
    if (signal.aborted) throw error;
    throw new ApiError('unreachable', String(error));
  }
  if (!response.ok) throw new ApiError(failureOf(response.status), await response.text());
  return (await response.json()) as T;
}
