/** The base map that the reader named, kept in this browser; none unless they did. */
import { useSyncExternalStore } from 'react';

export type BaseMap =
  | { readonly kind: 'none' }
  /** Read from this device and never sent; a browser does not keep it over visits. */
  | { readonly kind: 'file'; readonly file: File }
  | { readonly kind: 'address'; readonly address: string; readonly attribution: string };

const KEY = 'duskwatch.base-map';
const NONE: BaseMap = { kind: 'none' };

/** What stands behind an address. */
export type AddressKind = 'style' | 'tiles' | 'pmtiles';

/** Asked without encryption only on this machine. */
const ASKABLE = /^(https:\/\/[^/]+|http:\/\/(localhost|127\.0\.0\.1|\[::1\])(:\d+)?)\//;

/** Null when it is no address that a map can be read from. A path on this server begins with /. */
export function addressKind(address: string): AddressKind | null {
  const local = address.startsWith('/') && !address.startsWith('//');
  if (!local && !ASKABLE.test(address)) return null;
  const path = address.split(/[?#]/)[0]!;
  if (path.includes('{z}') && path.includes('{x}') && path.includes('{y}')) return 'tiles';
  return path.endsWith('.pmtiles') ? 'pmtiles' : 'style';
}

function read(): BaseMap {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as { address?: unknown; attribution?: unknown } | null;
    if (typeof kept?.address !== 'string' || addressKind(kept.address) === null) return NONE;
    return { kind: 'address', address: kept.address, attribution: typeof kept.attribution === 'string' ? kept.attribution : '' };
  } catch {
    return NONE;
  }
}

let current: BaseMap | null = null;
const listeners = new Set<() => void>();

const baseMap = (): BaseMap => {
  current ??= read();
  return current;
};

export function chooseBaseMap(next: BaseMap): void {
  current = next;
  try {
    if (next.kind === 'address')
      localStorage.setItem(KEY, JSON.stringify({ address: next.address, attribution: next.attribution }));
    else localStorage.removeItem(KEY);
  } catch {}
  for (const tell of listeners) tell();
}

export const useBaseMap = (): BaseMap =>
  useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => void listeners.delete(listener);
  }, baseMap);
