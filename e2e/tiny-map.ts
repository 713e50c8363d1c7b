/** A base map of one colour, made here: a PNG tile, a PMTiles archive that holds it, and a server that gives out both. */
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { crc32, deflateSync } from 'node:zlib';
import type { OwnServer } from './own-server.ts';

export type Colour = readonly [red: number, green: number, blue: number];

const SIZE = 256;

/** PNG (ISO/IEC 15948): signature, header, pixels, end; 8 bits a channel, no filter. */
function tile(colour: Colour): Buffer {
  const row = Buffer.concat([Buffer.of(0), Buffer.concat(Array.from({ length: SIZE }, () => Buffer.from(colour)))]);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(SIZE, 0);
  header.writeUInt32BE(SIZE, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const pixels = deflateSync(Buffer.concat(Array.from({ length: SIZE }, () => row)));
  const signature = Buffer.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', pixels), chunk('IEND', Buffer.alloc(0))]);
}

function chunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(data.length, 0);
  ends.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([ends.subarray(0, 4), named, ends.subarray(4)]);
}

const HEADER = 127;
const UNCOMPRESSED = 1;
const PNG = 2;

/** PMTiles version 3 (the published specification of the format) with the world as one tile at zoom 0. */
export function archive(colour: Colour, attribution: string): Buffer {
  const image = tile(colour);
  const metadata = Buffer.from(JSON.stringify({ attribution }));
  // One entry: its number of tiles, first tile 0, run of 1, length, and offset 0 written as 1.
  const directory = Buffer.from([1, 0, 1, ...varint(image.length), 1]);
  const header = Buffer.alloc(HEADER);
  header.write('PMTiles', 0, 'latin1');
  header[7] = 3;
  const metadataAt = HEADER + directory.length;
  const tilesAt = metadataAt + metadata.length;
  const sections = [HEADER, directory.length, metadataAt, metadata.length, tilesAt, 0, tilesAt, image.length, 1, 1, 1];
  for (const [index, value] of sections.entries()) header.writeBigUInt64LE(BigInt(value), 8 + index * 8);
  header.set([1, UNCOMPRESSED, UNCOMPRESSED, PNG, 0, 0], 96);
  for (const [index, degrees] of [-180, -85, 180, 85].entries()) header.writeInt32LE(degrees * 10_000_000, 102 + index * 4);
  return Buffer.concat([header, directory, metadata, image]);
}

function varint(value: number): number[] {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...varint(value >>> 7)];
}

/** A map server elsewhere: the same tile at every place of zoom 3 and above, as of a region, and the archive. */
export async function startTiles(colour: Colour): Promise<OwnServer & { asked(): readonly string[] }> {
  const image = tile(colour);
  const whole = archive(colour, 'A credit inside');
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(request.url!);
    response.setHeader('access-control-allow-origin', '*');
    const zoom = Number(/^\/(\d+)\/\d+\/\d+\.png$/.exec(request.url!)?.[1] ?? -1);
    if (zoom >= 3) return void response.setHeader('content-type', 'image/png').end(image);
    const [from, to] =
      /bytes=(\d+)-(\d+)/
        .exec(request.headers.range ?? '')
        ?.slice(1)
        .map(Number) ?? [];
    if (request.url !== '/world.pmtiles' || from === undefined || to === undefined) return void response.writeHead(404).end();
    const part = whole.subarray(from, to + 1);
    response.writeHead(206, { 'content-range': `bytes ${from}-${from + part.length - 1}/${whole.length}` }).end(part);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked: () => asked,
    async stop() {
      server.closeAllConnections();
      server.close();
    },
  };
}
