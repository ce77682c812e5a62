/** Lanczos approximation of ln Γ(x), g = 7, n = 9; error below 1e-14 for x > 0.5. Coefficients: P. Godfrey (2001). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

function lnGamma(x: number): number {
  const z = x - 1;
  const t = z + 7.5;
  const sum = LANCZOS.reduce((total, c, i) => total + (i === 0 ? c : c / (z + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Continued fraction of the incomplete beta function, by Lentz's method. Source: DLMF 8.17.22. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let fraction = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    for (const term of [even, odd]) {
      d = 1 / (1 + term * d || tiny);
      c = 1 + term / c || tiny;
      fraction *= c * d;
    }
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return fraction;
}

/** Regularised incomplete beta function I_x(a, b). Source: DLMF 8.17. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  if (x < (a + 1) / (a + b + 2)) return (front * betaFraction(x, a, b)) / a;
  return 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/**
 * Chance that |t| of a Student distribution stays below a value.
 *
 *     P(|t| < s) = 1 - I_(ν/(ν + s²))(ν/2, 1/2)
 *
 * Source: Abramowitz & Stegun, 26.7.1 and 26.5.27. ν need not be whole (Welch's degrees of freedom are not).
 */
export function studentWithin(s: number, degreesOfFreedom: number): number {
  return 1 - incompleteBeta(degreesOfFreedom / (degreesOfFreedom + s * s), degreesOfFreedom / 2, 0.5);
}

/** Half-width s of the interval that holds a share of a Student distribution: P(|t| < s) = confidence. */
export function studentHalfWidth(confidence: number, degreesOfFreedom: number): number {
  // At a million the distribution is the normal one to six digits; this also serves infinitely many.
  const df = Math.min(degreesOfFreedom, 1e6);
  let [low, high] = [0, 1];
  while (studentWithin(high, df) < confidence && high < 1e12) high *= 2;
  for (let step = 0; step < 200 && high - low > 1e-12 * high; step++) {
    const middle = (low + high) / 2;
    if (studentWithin(middle, df) < confidence) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
