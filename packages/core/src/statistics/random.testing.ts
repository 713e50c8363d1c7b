/** Seeded random numbers for tests and benches. */
export interface Random {
  /** Uniform on (0, 1). */
  readonly uniform: () => number;
  readonly normal: () => number;
  readonly poisson: (mean: number) => number;
  /** With scale 1. */
  readonly gamma: (shape: number) => number;
  readonly negativeBinomial: (mean: number, k: number) => number;
}

/** The generator is a 32-bit linear congruential one with the constants of Knuth's TAOCP vol. 2, its output mixed. */
export function randomFrom(seed: number): Random {
  let state = Math.imul(seed, 2654435761) >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x45d9f3b);
    return (((mixed ^ (mixed >>> 16)) >>> 0) + 0.5) / 2 ** 32;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());

  /** Knuth's product of uniforms, the mean taken in parts that keep the product above 0. */
  function poisson(mean: number): number {
    if (mean > 300) return poisson(300) + poisson(mean - 300);
    const limit = Math.exp(-mean);
    let [count, product] = [0, uniform()];
    while (product > limit) {
      product *= uniform();
      count++;
    }
    return count;
  }

  /** With scale 1, after Marsaglia & Tsang 2000. */
  function gamma(shape: number): number {
    if (shape < 1) return gamma(shape + 1) * uniform() ** (1 / shape);
    const d = shape - 1 / 3;
    for (;;) {
      const x = normal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(uniform()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
    }
  }

  return {
    uniform,
    normal,
    poisson,
    gamma,
    negativeBinomial: (mean, k) => poisson(k === Infinity ? mean : (mean / k) * gamma(k)),
  };
}
