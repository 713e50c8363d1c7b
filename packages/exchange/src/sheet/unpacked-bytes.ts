/** Signatures and places of a zip file's directory (APPNOTE 6.3.10, 4.3.12 and 4.3.16). */
const END = 0x06054b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const ENTRY = 0x02014b50;
const ENTRY_LENGTH = 46;

/** What a zip file says that its entries come to when unpacked, in bytes; null where it has no directory to say it in. */
export function unpackedBytes(bytes: Uint8Array): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const last = bytes.length - END_LENGTH;
  let end = last;
  while (end >= 0 && end >= last - LONGEST_COMMENT && view.getUint32(end, true) !== END) end--;
  if (end < 0 || view.getUint32(end, true) !== END) return null;

  let total = 0;
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + ENTRY_LENGTH > bytes.length || view.getUint32(at, true) !== ENTRY) return null;
    // An entry of 4 GiB or more says so with the largest number that fits.
    total += view.getUint32(at + 24, true);
    at += ENTRY_LENGTH + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return total;
}
