/** Figures that a phone holds counts against; apart from the others, so that it loads no more than these. */
export const NEXT_COUNT = {
  /** Scatter k of one visit about what it should have found. */
  scatter: 2,
  /** Shape of a gamma distribution of what a trap catches against its visits just before. */
  drift: 2,
  /** Moths added to those caught before: a flight may begin with the next night. */
  notYet: 2,
  /** A count less probable than this, or one above it, is asked about at the trap. */
  askBelow: 0.0003,
  /** A count less probable than this, or one below it. Flights do end within days: few counts can be as odd on this side. */
  askBelowLow: 0.06,
} as const;
