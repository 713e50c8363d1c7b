/** Dense linear algebra for a handful of unknowns. Symmetric matrices are square, row by row, in one array. */

/** The lower triangle L with A = L·Lᵀ, or null when A is not positive definite to working precision. */
export function cholesky(a: Float64Array, size: number): Float64Array | null {
  const l = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * size + j]!;
      for (let m = 0; m < j; m++) sum -= l[i * size + m]! * l[j * size + m]!;
      if (i === j) {
        if (!(sum > 1e-14 * a[i * size + i]!)) return null;
        l[i * size + i] = Math.sqrt(sum);
      } else l[i * size + j] = sum / l[j * size + j]!;
    }
  }
  return l;
}

/** x with L·Lᵀ·x = b. */
export function solveCholesky(l: Float64Array, b: Float64Array): Float64Array {
  const size = b.length;
  const x = b.slice();
  for (let i = 0; i < size; i++) {
    for (let m = 0; m < i; m++) x[i]! -= l[i * size + m]! * x[m]!;
    x[i]! /= l[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let m = i + 1; m < size; m++) x[i]! -= l[m * size + i]! * x[m]!;
    x[i]! /= l[i * size + i]!;
  }
  return x;
}

/** (L·Lᵀ)⁻¹. */
export function invertCholesky(l: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    const unit = new Float64Array(size);
    unit[j] = 1;
    const column = solveCholesky(l, unit);
    for (let i = 0; i < size; i++) inverse[i * size + j] = column[i]!;
  }
  return inverse;
}

/** Xᵀ·diag(weight)·X for X given by its columns. */
export function weightedGram(columns: readonly Float64Array[], weight: Float64Array): Float64Array {
  const size = columns.length;
  const gram = new Float64Array(size * size);
  const weighted = new Float64Array(weight.length);
  for (let i = 0; i < size; i++) {
    multiply(columns[i]!, weight, weighted);
    for (let j = 0; j <= i; j++) gram[i * size + j] = gram[j * size + i] = dot(weighted, columns[j]!);
  }
  return gram;
}

/** Xᵀ·v for X given by its columns. */
export function transposeTimes(columns: readonly Float64Array[], v: Float64Array): Float64Array {
  return Float64Array.from(columns, (column) => dot(column, v));
}

/** X·β + offset, written into `into`. */
export function linearPredictor(
  columns: readonly Float64Array[],
  beta: Float64Array,
  offset: Float64Array,
  into: Float64Array,
): void {
  into.set(offset);
  columns.forEach((column, j) => {
    const slope = beta[j]!;
    for (let i = 0; i < into.length; i++) into[i]! += slope * column[i]!;
  });
}

/**
 * The first column that is a linear combination of those before it, with the ones it combines; null when all are
 * independent. Modified Gram–Schmidt; what remains of a dependent column is below `tolerance` of its length.
 */
export function dependentColumn(
  columns: readonly Float64Array[],
  tolerance = 1e-7,
): { readonly column: number; readonly of: readonly number[] } | null {
  if (clearlyIndependent(columns)) return null;
  const basis: Float64Array[] = [];
  const independent: Float64Array[] = [];
  for (const [index, column] of columns.entries()) {
    const rest = column.slice();
    for (const unit of basis) addMultiple(rest, -dot(unit, rest), unit);
    const [left, length] = [Math.sqrt(dot(rest, rest)), Math.sqrt(dot(column, column))];
    if (!(left > tolerance * length)) return { column: index, of: combinationOf(column, independent) };
    for (let i = 0; i < rest.length; i++) rest[i]! /= left;
    basis.push(rest);
    independent.push(column);
  }
  return null;
}

/** By what each column adds in the Gram matrix: quick, and enough for all but nearly dependent columns. */
function clearlyIndependent(columns: readonly Float64Array[]): boolean {
  const size = columns.length;
  if (size === 0) return true;
  const gram = weightedGram(columns, new Float64Array(columns[0]!.length).fill(1));
  const factor = cholesky(gram, size);
  return factor !== null && columns.every((_, i) => factor[i * size + i]! ** 2 > 1e-6 * gram[i * size + i]!);
}

function combinationOf(column: Float64Array, independent: readonly Float64Array[]): number[] {
  const even = new Float64Array(column.length).fill(1);
  const factor = cholesky(weightedGram(independent, even), independent.length);
  const share = factor === null ? [] : [...solveCholesky(factor, transposeTimes(independent, column))];
  return share.flatMap((value, j) => (Math.abs(value) > 1e-6 ? [j] : []));
}

/** Four sums side by side: one alone would wait for each addition before the next. */
export function dot(a: Float64Array, b: Float64Array): number {
  let [s0, s1, s2, s3] = [0, 0, 0, 0];
  const inFours = a.length & ~3;
  for (let i = 0; i < inFours; i += 4) {
    s0 += a[i]! * b[i]!;
    s1 += a[i + 1]! * b[i + 1]!;
    s2 += a[i + 2]! * b[i + 2]!;
    s3 += a[i + 3]! * b[i + 3]!;
  }
  for (let i = inFours; i < a.length; i++) s0 += a[i]! * b[i]!;
  return s0 + s1 + (s2 + s3);
}

function multiply(a: Float64Array, b: Float64Array, into: Float64Array): void {
  for (let i = 0; i < a.length; i++) into[i] = a[i]! * b[i]!;
}

function addMultiple(to: Float64Array, factor: number, of: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i]! += factor * of[i]!;
}
