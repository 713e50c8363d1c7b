/** The style that a base map is drawn with. */
import { addProtocol, type StyleSpecification } from 'maplibre-gl';
import { FileSource, PMTiles, Protocol, TileType } from 'pmtiles';
import { mercator, type Place } from '../../shared/places/projection.ts';
import { addressKind, type BaseMap } from './base-map.ts';

const protocol = new Protocol();
addProtocol('pmtiles', protocol.tile);

export class BaseMapError extends Error {
  /** The origin that the page may not ask; null when that is not what went wrong. */
  readonly forbidden: string | null;

  constructor(message: string, forbidden: string | null = null) {
    super(message);
    this.forbidden = forbidden;
  }
}

/** Nothing at all: the page's own paper shows through. */
const PLAIN: StyleSpecification = { version: 8, sources: {}, layers: [] };

export interface Ground {
  readonly style: StyleSpecification | string;
  readonly attribution: string;
}

/** What of a map is looked at. */
export interface Near extends Place {
  readonly zoom: number;
}

/** Asks the address once by itself, so that what stands in the way can be told. Rejects with `BaseMapError`. */
export async function groundOf(base: BaseMap, near: Near): Promise<Ground> {
  if (base.kind === 'none') return { style: PLAIN, attribution: '' };
  if (base.kind === 'file') {
    const archive = new PMTiles(new FileSource(base.file));
    return ofArchive(archive, base.file.name, '');
  }
  const { address, attribution } = base;
  const url = new URL(address, location.origin);
  switch (addressKind(address)) {
    case 'tiles': {
      const tiles = [url.origin === location.origin ? `${location.origin}${address}` : address];
      await probe(tileAt(tiles[0]!, near));
      const source = { type: 'raster' as const, tiles, tileSize: 256, attribution };
      return {
        style: { version: 8, sources: { base: source }, layers: [{ id: 'base', type: 'raster', source: 'base' }] },
        attribution,
      };
    }
    case 'pmtiles':
      await probe(url.href, { headers: { range: 'bytes=0-0' } });
      return ofArchive(new PMTiles(url.href), url.href, attribution);
    default:
      await probe(url.href);
      return { style: url.href, attribution };
  }
}

/** The tile that is looked at: those of a region need not hold the whole world, and MapLibre says nothing of a missing one. */
function tileAt(template: string, { zoom, ...place }: Near): string {
  const z = Math.max(0, Math.round(zoom + 1));
  const [x, y] = mercator(place).map((part) => Math.floor(part * 2 ** z));
  return template.replace('{z}', String(z)).replace('{x}', String(x)).replace('{y}', String(y));
}

async function probe(url: string, init: RequestInit = {}): Promise<void> {
  let forbidden: string | null = null;
  const note = ({ blockedURI }: SecurityPolicyViolationEvent) => {
    forbidden = new URL(blockedURI, location.origin).origin;
  };
  document.addEventListener('securitypolicyviolation', note);
  try {
    const response = await fetch(url, init);
    if (!response.ok) throw new BaseMapError(`${response.status} ${response.statusText}`.trim());
  } catch (error) {
    if (error instanceof BaseMapError) throw error;
    // The event comes a moment after the refusal.
    await new Promise((resolve) => setTimeout(resolve, 50));
    throw new BaseMapError(String(error), forbidden);
  } finally {
    document.removeEventListener('securitypolicyviolation', note);
  }
}

/** Without a style of its own, an archive's shapes are drawn as faint lines and washes, whatever they are. */
async function ofArchive(archive: PMTiles, name: string, attribution: string): Promise<Ground> {
  try {
    protocol.add(archive);
    const [header, metadata] = await Promise.all([archive.getHeader(), archive.getMetadata()]);
    const said = metadata as { attribution?: string; vector_layers?: readonly { id: string }[] } | null;
    const credit = attribution || plainText(said?.attribution ?? '');
    const url = `pmtiles://${archive.source.getKey()}`;
    if (header.tileType !== TileType.Mvt) {
      const sources = { base: { type: 'raster' as const, url, tileSize: 256 } };
      return { style: { version: 8, sources, layers: [{ id: 'base', type: 'raster', source: 'base' }] }, attribution: credit };
    }
    const ink = '#8f8770';
    const layers: StyleSpecification['layers'] = (said?.vector_layers ?? []).flatMap(({ id }) => [
      {
        id: `${id}-area`,
        type: 'fill' as const,
        source: 'base',
        'source-layer': id,
        filter: ['==', ['geometry-type'], 'Polygon'],
        paint: { 'fill-color': ink, 'fill-opacity': 0.08 },
      },
      {
        id: `${id}-line`,
        type: 'line' as const,
        source: 'base',
        'source-layer': id,
        filter: ['!=', ['geometry-type'], 'Point'],
        paint: { 'line-color': ink, 'line-opacity': 0.55, 'line-width': 0.8 },
      },
    ]);
    return { style: { version: 8, sources: { base: { type: 'vector', url } }, layers }, attribution: credit };
  } catch (error) {
    throw new BaseMapError(`${name}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

const plainText = (html: string): string => html.replace(/<[^>]*>/g, '').trim();
