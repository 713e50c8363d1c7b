/** The text of a sheet in whatever encoding it was saved; null for what is no text. */
export function decodeSheetText(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return decoded('utf-16le', bytes);
  if (first === 0xfe && second === 0xff) return decoded('utf-16be', bytes);
  const sample = bytes.subarray(0, 4096);
  const zeros = [0, 1].map((parity) => sample.filter((byte, index) => index % 2 === parity && byte === 0).length);
  if (zeros[0]! + zeros[1]! > 0) {
    // Plain letters in UTF-16 without its mark have a zero in every second byte.
    if (zeros[1]! > sample.length * 0.3 && zeros[0] === 0) return decoded('utf-16le', bytes);
    return zeros[0]! > sample.length * 0.3 && zeros[1] === 0 ? decoded('utf-16be', bytes) : null;
  }
  return decoded('utf-8', bytes) ?? decoded('windows-1252', bytes);
}

function decoded(encoding: string, bytes: Uint8Array): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
