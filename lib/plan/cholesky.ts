/** Lower Cholesky factor of a covariance matrix, row by row. */
export function cholesky(size: number, entry: (i: number, j: number) => number): readonly Float64Array[] {
  const rows: Float64Array[] = [];
  for (let i = 0; i < size; i++) {
    const row = new Float64Array(i + 1);
    for (let j = 0; j <= i; j++) {
      let sum = entry(i, j);
      const other = j === i ? row : rows[j]!;
      for (let k = 0; k < j; k++) sum -= row[k]! * other[k]!;
      row[j] = j === i ? Math.sqrt(sum) : sum / other[j]!;
    }
    rows.push(row);
  }
  return rows;
}

const NOTHING = new Float64Array();

/** Solves L x = b for a lower triangle L. */
export function forward(lower: readonly Float64Array[], b: (i: number) => number): Float64Array {
  if (lower.length === 0) return NOTHING;
  const x = new Float64Array(lower.length);
  for (let i = 0; i < lower.length; i++) {
    const row = lower[i]!;
    let sum = b(i);
    for (let k = 0; k < i; k++) sum -= row[k]! * x[k]!;
    x[i] = sum / row[i]!;
  }
  return x;
}

/** Sum of the products, pair by pair. */
export function innerProduct(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
