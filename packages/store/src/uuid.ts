/**
 * UUID version 7 (RFC 9562, section 5.7): 48 bits of Unix milliseconds, then a 12-bit counter, then 62 random bits.
 *
 * Ids made by one process sort in the order they were made. The counter starts low at random in each millisecond
 * and, when it runs over, borrows from the next one (section 6.2, method 1).
 */
const BYTES_EACH = 10;
const POOL_BYTES = BYTES_EACH * 512;
const pool = new Uint8Array(POOL_BYTES);
const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

let used = POOL_BYTES;
let lastMs = 0;
let counter = 0;

export function uuidv7(nowMs: number = Date.now()): string {
  if (used === POOL_BYTES) {
    crypto.getRandomValues(pool);
    used = 0;
  }
  const random = pool.subarray(used, used + BYTES_EACH);
  used += BYTES_EACH;
  if (nowMs > lastMs) {
    lastMs = nowMs;
    counter = ((random[8]! << 8) | random[9]!) & 0x3ff;
  } else if (++counter > 0xfff) {
    lastMs += 1;
    counter = 0;
  }
  const time = lastMs.toString(16).padStart(12, '0');
  const count = counter.toString(16).padStart(3, '0');
  const tail = `${HEX[random[2]!]}${HEX[random[3]!]}${HEX[random[4]!]}${HEX[random[5]!]}${HEX[random[6]!]}${HEX[random[7]!]}`;
  return `${time.slice(0, 8)}-${time.slice(8)}-7${count}-${HEX[0x80 | (random[0]! & 0x3f)]}${HEX[random[1]!]}-${tail}`;
}
