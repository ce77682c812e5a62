/** Above this the tail is below 1e-300 and taken as nothing. */
const LARGEST = 37;

/** Beyond this a continued fraction takes over. */
const SEAM = 7.07106781186547;

/**
 * Chance that a standard normal number is below x.
 *
 * Rational approximation 5666 of J. F. Hart et al., Computer Approximations (1968), good to about 1e-14.
 */
export function normalBelow(x: number): number {
  const z = Math.abs(x);
  if (z > LARGEST) return x > 0 ? 1 : 0;
  const bell = Math.exp((-z * z) / 2);
  const tail = z < SEAM ? bell * rational(z) : bell / (fraction(z) * Math.sqrt(2 * Math.PI));
  return x > 0 ? 1 - tail : tail;
}

function rational(z: number): number {
  const above =
    (((((3.52624965998911e-2 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z +
      112.079291497871) *
      z +
      221.213596169931) *
      z +
    220.206867912376;
  const below =
    ((((((8.83883476483184e-2 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z +
      296.564248779674) *
      z +
      637.333633378831) *
      z +
      793.826512519948) *
      z +
    440.413735824752;
  return above / below;
}

/** Continued fraction of Mills' ratio, inverted: z + 1/(z + 2/(z + 3/(z + 4/(z + 0.65)))). Abramowitz & Stegun 26.2.14. */
function fraction(z: number): number {
  return z + 1 / (z + 2 / (z + 3 / (z + 4 / (z + 0.65))));
}

/** Density of the standard normal. */
export function normalDensity(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
}

/** Where Newton starts: a quarter of the digits is enough. Abramowitz & Stegun 26.2.22, 0 < p <= ½. */
function roughTail(p: number): number {
  const t = Math.sqrt(-2 * Math.log(p));
  return t - (2.30753 + 0.27061 * t) / (1 + 0.99229 * t + 0.04481 * t * t);
}

/**
 * The x below which a standard normal number lies with chance p, 0 < p < 1.
 *
 * Halley's method on normalBelow from Abramowitz & Stegun 26.2.22.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a chance must lie between 0 and 1, got ${p}`);
  if (p > 0.5) return -normalQuantile(1 - p);
  let x = -roughTail(p);
  for (let step = 0; step < 4; step++) {
    const newton = (normalBelow(x) - p) / normalDensity(x);
    x -= newton / (1 + (x * newton) / 2);
  }
  return x;
}
