/**
 * CIPM-2007 written out a second time, straight from the paper (Picard et al., Metrologia 45 (2008) 149, eqs 1 and
 * A1.1 to A1.4) and in its own units, with the paper's own saturation equation at every temperature. Nothing is
 * shared with the code under test. tests/reference/air.test.ts ties it to published densities first.
 *
 * @param t temperature [°C]
 * @param p pressure [Pa]
 * @param h relative humidity, 0 to 1
 */
export function cipm2007({ t, p, h }: { readonly t: number; readonly p: number; readonly h: number }): {
  readonly density: number;
  readonly dryDensity: number;
} {
  const T = t + 273.15;
  const psv = Math.exp(1.2378847e-5 * T ** 2 - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
  const f = 1.00062 + 3.14e-8 * p + 5.6e-7 * t ** 2;
  const xv = (h * f * psv) / p;
  const Z =
    1 -
    (p / T) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t ** 2 +
        (5.707e-6 - 2.051e-8 * t) * xv +
        (1.9898e-4 - 2.376e-6 * t) * xv ** 2) +
    (p / T) ** 2 * (1.83e-11 - 0.765e-8 * xv ** 2);
  const perMolarMass = p / (Z * 8.314472 * T);
  return {
    density: perMolarMass * (28.96546e-3 * (1 - xv) + 18.01528e-3 * xv),
    dryDensity: perMolarMass * 28.96546e-3 * (1 - xv),
  };
}
