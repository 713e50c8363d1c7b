/**
 * UUID version 7 (RFC 9562, section 5.7): 48 bits of Unix milliseconds, a 12-bit counter, 62 random bits. Ids made
 * by one page sort in the order they were made, also when the clock stands still or goes back.
 */
let lastMs = 0;
let counter = 0;

export function uuidv7(nowMs: number): string {
  const random = crypto.getRandomValues(new Uint8Array(10));
  if (nowMs > lastMs) {
    lastMs = nowMs;
    counter = ((random[8]! << 8) | random[9]!) & 0x3ff;
  } else if (++counter > 0xfff) {
    lastMs += 1;
    counter = 0;
  }
  random[0] = 0x80 | (random[0]! & 0x3f);
  const hex = [...random.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  const time = lastMs.toString(16).padStart(12, '0');
  const count = counter.toString(16).padStart(3, '0');
  return `${time.slice(0, 8)}-${time.slice(8)}-7${count}-${hex.slice(0, 4)}-${hex.slice(4)}`;
}
