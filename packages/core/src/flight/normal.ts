/** The normal distribution, the curve a flight is taken to follow along the heat axis. */

const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Standard normal density. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / SQRT_TWO_PI;

/**
 * Probability that a standard normal deviate is at most `z`; error below 1e-15, and below 1e-8 of the tail.
 * Rational approximation of Hart 1968, Computer Approximations, no. 5666, and a continued fraction beyond (from memory);
 * checked against R. With the density at `z` at hand no further exponential is taken.
 */
export function normalCdf(z: number, density = normalDensity(z)): number {
  const x = Math.abs(z);
  const tail = density * SQRT_TWO_PI * (x < CENTRE ? centre(x) : far(x));
  return z > 0 ? 1 - tail : tail;
}

const CENTRE = 10 / Math.SQRT2;

function centre(x: number): number {
  const above =
    (((((0.0352624965998911 * x + 0.700383064443688) * x + 6.37396220353165) * x + 33.912866078383) * x + 112.079291497871) * x +
      221.213596169931) *
      x +
    220.206867912376;
  const below =
    ((((((0.0883883476483184 * x + 1.75566716318264) * x + 16.064177579207) * x + 86.7807322029461) * x + 296.564248779674) * x +
      637.333633378831) *
      x +
      793.826512519948) *
      x +
    440.413735824752;
  return above / below;
}

function far(x: number): number {
  let fraction = x + 0.65;
  for (let i = 4; i >= 1; i--) fraction = x + i / fraction;
  return 1 / (fraction * SQRT_TWO_PI);
}
