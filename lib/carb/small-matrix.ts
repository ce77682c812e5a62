/** A small symmetric positive definite matrix, by rows. */
export type Matrix = readonly (readonly number[])[];
export type Vector = readonly number[];

/** Lower triangle L with L Lᵀ = m. Source: Golub & Van Loan, Matrix Computations, algorithm 4.2.1 (from memory). */
function cholesky(m: Matrix): number[][] {
  const lower = m.map((row) => row.map(() => 0));
  for (let i = 0; i < m.length; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = m[i]![j]!;
      for (let k = 0; k < j; k++) rest -= lower[i]![k]! * lower[j]![k]!;
      if (i !== j) lower[i]![j] = rest / lower[j]![j]!;
      else if (rest > 0) lower[i]![i] = Math.sqrt(rest);
      else throw new RangeError('the matrix is not positive definite');
    }
  }
  return lower;
}

/** x of m x = b. */
export function solve(m: Matrix, b: Vector): number[] {
  const lower = cholesky(m);
  const n = b.length;
  const x = [...b];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - lower[i]![k]! * x[k]!;
    x[i] = x[i]! / lower[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - lower[k]![i]! * x[k]!;
    x[i] = x[i]! / lower[i]![i]!;
  }
  return x;
}

/** ln of the determinant. */
export function logDeterminant(m: Matrix): number {
  return 2 * cholesky(m).reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
}

export function inverse(m: Matrix): number[][] {
  const columns = m.map((_, j) =>
    solve(
      m,
      m.map((_, i) => (i === j ? 1 : 0)),
    ),
  );
  return m.map((_, i) => columns.map((column) => column[i]!));
}

export function dot(a: Vector, b: Vector): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}

export function times(m: Matrix, v: Vector): number[] {
  return m.map((row) => dot(row, v));
}
