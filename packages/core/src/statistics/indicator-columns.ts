/** Columns of a design with their names. */
export interface NamedColumns {
  readonly names: readonly string[];
  readonly X: readonly Float64Array[];
}

/** One column of ones and noughts for each level but the first, which is what the others are set against. */
export function indicatorColumns(factor: string, values: readonly string[]): NamedColumns {
  const levels = [...new Set(values)].slice(1);
  return {
    names: levels.map((level) => `${factor} ${level}`),
    X: levels.map((level) => Float64Array.from(values, (value) => (value === level ? 1 : 0))),
  };
}

/** An intercept and the columns given, side by side. */
export function withIntercept(rows: number, ...parts: readonly NamedColumns[]): NamedColumns {
  return {
    names: ['intercept', ...parts.flatMap(({ names }) => names)],
    X: [new Float64Array(rows).fill(1), ...parts.flatMap(({ X }) => X)],
  };
}
