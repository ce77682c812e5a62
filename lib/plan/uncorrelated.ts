/** Times the columns are ranked anew: each leaves about a tenth of the correlation before it. */
const ROUNDS = 4;

/** Places by value, lowest first, ties in order. */
export function placesOf(values: Float64Array): Uint32Array {
  return Uint32Array.from(values, (_, i) => i).sort((i, j) => values[i]! - values[j]! || i - j);
}

/** Values by rank: draw i gets the level of its place among all draws. */
export function byRank(order: Uint32Array, levels: Float64Array): Float64Array {
  const column = new Float64Array(order.length);
  for (let place = 0; place < order.length; place++) column[order[place]!] = levels[place]!;
  return column;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Each column without what it shares with the ones before it (Gram and Schmidt). */
function atRightAngles(columns: readonly Float64Array[]): readonly Float64Array[] {
  const made: Float64Array[] = [];
  for (const column of columns) {
    const rest = column.slice();
    for (const before of made) {
      const share = dot(rest, before) / dot(before, before);
      for (let i = 0; i < rest.length; i++) rest[i] = rest[i]! - share * before[i]!;
    }
    made.push(rest);
  }
  return made;
}

/**
 * Columns of the same levels in another order, so that hardly any two are correlated: what they share is taken out, and
 * each is ranked anew. Few draws are left as they are, where there is no room to turn them.
 *
 * Source: R. L. Iman, W. J. Conover, Communications in Statistics B 11 (1982) 311, with Gram and Schmidt for Cholesky.
 */
export function uncorrelated(
  columns: readonly Float64Array[],
  levels: Float64Array,
): readonly Float64Array[] {
  if (levels.length < 2 * columns.length) return columns;
  let turned = columns;
  for (let round = 0; round < ROUNDS; round++)
    turned = atRightAngles(turned).map((column) => byRank(placesOf(column), levels));
  return turned;
}
