/** Where a stop lies from another place, and the phone's own map of it. */
import { bearingDegrees, distanceKm } from '@duskwatch/core';
import { driveWords as d } from '../../text/drive.ts';
import { wayText } from './figures.ts';

export interface Place {
  readonly latitude: number | null;
  readonly longitude: number | null;
}

const SECTOR_DEGREES = 45;

/** How far and which way, in words; null when either place is not known. */
export function wayFrom(from: Place, to: Place): { readonly distance: string; readonly wind: string } | null {
  const km = distanceKm(from, to);
  const degrees = bearingDegrees(from, to);
  if (km === null || degrees === null) return null;
  return { distance: wayText(km), wind: d.way.winds[Math.round(degrees / SECTOR_DEGREES) % d.way.winds.length]! };
}

/** Hands a place over to whatever map the phone has (RFC 5870); phones of one maker know an address of their own only. */
export function mapHref({ latitude, longitude }: Place, name: string, agent: string): string | null {
  if (latitude === null || longitude === null) return null;
  const at = `${latitude},${longitude}`;
  const label = encodeURIComponent(name);
  return /iPhone|iPad|iPod/.test(agent) ? `maps:?ll=${at}&q=${label}` : `geo:${at}?q=${at}(${label})`;
}
