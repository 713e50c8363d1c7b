/**
 * Random numbers for the demo: small, seeded, the same on every machine.
 *
 * A Weyl sequence (steps of 2³²/φ, so that states spread evenly) goes through a 32-bit finalising mixer of
 * two multiply–xorshift rounds; the scheme is that of Steele, Lea & Flood 2014, "Fast splittable pseudorandom
 * number generators", OOPSLA, 453–472, with the mixing constants of MurmurHash3's finaliser (public domain).
 * Good enough to invent a valley with; not for cryptography.
 */
export type Random = () => number;

const GOLDEN_STEP = 0x9e3779b9;

function mix32(state: number): number {
  let h = state;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** FNV-1a of a text (public domain): turns a label into a starting state. */
function hash32(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
}

/**
 * A stream of uniform numbers in [0, 1) that belongs to a label. Each trap, farm and year draws from its own
 * stream, so that adding one to the demo changes no other.
 */
export function randomFor(label: string): Random {
  let state = mix32(hash32(label));
  return () => {
    state = (state + GOLDEN_STEP) | 0;
    return mix32(state) / 2 ** 32;
  };
}
