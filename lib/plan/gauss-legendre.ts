/** Places in [−1, 1] and their weights: the sum of weight × f(place) is the integral of f. */
export type Rule = { readonly places: Float64Array; readonly weights: Float64Array };

/** Newton doubles the digits each time; from two of them, this many are enough. */
const NEWTON_STEPS = 5;

/** The value of the Legendre polynomial P_n and its slope (Abramowitz & Stegun 22.7.10, 22.8.5). */
function legendre(n: number, x: number): { readonly value: number; readonly slope: number } {
  let [before, value] = [1, x];
  for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return { value, slope: (n * (x * value - before)) / (x * x - 1) };
}

function makeRule(n: number): Rule {
  const rule = { places: new Float64Array(n), weights: new Float64Array(n) };
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    for (let step = 0; step < NEWTON_STEPS; step++) {
      const { value, slope } = legendre(n, x);
      x -= value / slope;
    }
    rule.places[i] = x;
    rule.weights[i] = 2 / ((1 - x * x) * legendre(n, x).slope ** 2);
  }
  return rule;
}

const rules = new Map<number, Rule>();

/** The Gauss-Legendre rule with n ≥ 2 places (Abramowitz & Stegun 25.4.29), exact for polynomials up to degree 2n − 1. */
export function gaussLegendre(n: number): Rule {
  const rule = rules.get(n) ?? makeRule(n);
  rules.set(n, rule);
  return rule;
}
