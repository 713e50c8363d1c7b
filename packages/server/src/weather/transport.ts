/** One request to a service of weather: politely, with patience that ends, and never for more than changed. */
import { lookup } from 'node:dns/promises';
import { isIP } from 'node:net';
import type { FetchTrouble } from '@duskwatch/store';

export interface Validators {
  readonly etag: string | null;
  readonly lastModified: string | null;
}

export type Answered =
  | {
      readonly kind: 'answer';
      readonly bytes: Uint8Array;
      readonly validators: Validators;
      /** ms since 1970 until which the answer holds; null where the service does not say. */
      readonly holdsUntil: number | null;
    }
  | { readonly kind: 'unchanged'; readonly holdsUntil: number | null }
  | {
      readonly kind: 'trouble';
      readonly trouble: FetchTrouble;
      /** Seconds to wait, where the service says so; 0 where it only says that it is too much. */
      readonly waitS: number | null;
    };

export interface AskOptions {
  /** Who asks, as services want to know. */
  readonly agent: string;
  readonly validators: Validators | null;
  /** False: an address that leads to this machine or its own network is not asked. */
  readonly mayAskOwnNetwork: boolean;
  readonly mayRedirect: boolean;
  readonly patienceMs: number;
  readonly stopping?: AbortSignal;
  readonly now: number;
}

const MOST_BYTES = 32 * 1024 * 1024;

export async function askAddress(address: string, options: AskOptions): Promise<Answered> {
  if (!URL.canParse(address) || !/^https?:$/.test(new URL(address).protocol)) return trouble('address', shown(address));
  const url = new URL(address);
  try {
    if (!options.mayAskOwnNetwork && (await isOwnNetwork(url.hostname))) return trouble('own-network', url.hostname);
    const response = await fetch(url, {
      redirect: options.mayRedirect ? 'follow' : 'error',
      signal: AbortSignal.any([AbortSignal.timeout(options.patienceMs), ...(options.stopping ? [options.stopping] : [])]),
      headers: {
        'user-agent': options.agent,
        accept: 'application/json, application/geo+json, text/csv, */*;q=0.5',
        ...(options.validators?.etag && { 'if-none-match': options.validators.etag }),
        ...(options.validators?.lastModified && { 'if-modified-since': options.validators.lastModified }),
      },
    });
    const holdsUntil = expiry(response.headers, options.now);
    if (response.status === 304) return { kind: 'unchanged', holdsUntil };
    const bytes = await bodyOf(response);
    if (!response.ok)
      return {
        kind: 'trouble',
        trouble: { kind: 'status', detail: `${url.hostname} ${response.status}${saidBy(bytes)}` },
        waitS: waitOf(response, options.now),
      };
    const validators = { etag: response.headers.get('etag'), lastModified: response.headers.get('last-modified') };
    return { kind: 'answer', bytes, validators, holdsUntil };
  } catch (error) {
    return failed(url.hostname, error);
  }
}

const trouble = (kind: FetchTrouble['kind'], detail: string): Answered => ({
  kind: 'trouble',
  trouble: { kind, detail },
  waitS: null,
});

/** An address may hold a key: only where it leads is said again. */
const shown = (address: string): string => address.split('?')[0]!.slice(0, 100);

function failed(host: string, error: unknown): Answered {
  if (error instanceof TooLarge) return trouble('too-large', host);
  if (!(error instanceof Error)) return trouble('unreachable', host);
  if (error.name === 'TimeoutError') return trouble('late', host);
  const cause = error.cause as { code?: string; message?: string } | undefined;
  return trouble('unreachable', `${host}: ${cause?.code ?? cause?.message ?? error.message}`);
}

class TooLarge extends Error {}

async function bodyOf(response: Response): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of response.body ?? []) {
    length += part.length;
    if (length > MOST_BYTES) throw new TooLarge();
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** What a service says of its own refusal: problem details (RFC 9457), `reason`, or nothing that is worth repeating. */
function saidBy(bytes: Uint8Array): string {
  try {
    const said = JSON.parse(new TextDecoder().decode(bytes)) as Readonly<Record<string, unknown>>;
    const text = said.detail ?? said.reason ?? said.errorMessage ?? said.title;
    return typeof text === 'string' ? `: ${text.slice(0, 200)}` : '';
  } catch {
    return '';
  }
}

/** Too Many Requests and Service Unavailable ask for patience, most with the time of it (RFC 9110, section 10.2.3). */
function waitOf({ status, headers }: Response, now: number): number | null {
  if (status !== 429 && status !== 503) return null;
  const written = headers.get('retry-after');
  if (written === null) return 0;
  const seconds = Number(written);
  const at = Date.parse(written);
  if (Number.isFinite(seconds)) return Math.max(0, seconds);
  return Number.isNaN(at) ? 0 : Math.max(0, (at - now) / 1000);
}

/** `Cache-Control: max-age` goes before `Expires` (RFC 9111, section 5.3). */
function expiry(headers: Headers, now: number): number | null {
  const age = /(?:^|[\s,])max-age=(\d+)/i.exec(headers.get('cache-control') ?? '')?.[1];
  if (age !== undefined) return now + Number(age) * 1000;
  const at = Date.parse(headers.get('expires') ?? '');
  return Number.isNaN(at) ? null : at;
}

/** Loopback, link-local, private and unspecified addresses (RFC 6890), by number or by name. */
async function isOwnNetwork(host: string): Promise<boolean> {
  const bare = host.replace(/^\[|\]$/g, '');
  const addresses = isIP(bare) ? [bare] : (await lookup(bare, { all: true })).map(({ address }) => address);
  return addresses.some(
    (address) =>
      /^(0|10|127|169\.254|192\.168|192\.0\.0|100\.(6[4-9]|[7-9]\d|1[01]\d|12[0-7])|172\.(1[6-9]|2\d|3[01]))\./.test(address) ||
      /^(::1?$|::ffff:|fe[89ab]|f[cd])/i.test(address),
  );
}
