import { describe, expect, it } from 'vitest';
import { workedExample } from '@/lib/words/worked-example';

/** Numbers of a page as a reader copies them onto a calculator. */
const read = (text: string): number => Number.parseFloat(text.replaceAll(',', '').replace('−', '-'));

/**
 * The example again, from the printed constants of CIPM-2007 (Picard et al., Metrologia 45 (2008) 149) and from what the
 * page itself shows, as a doubter would.
 */
describe('the night worked by hand', () => {
  const { rows, needPercent, byNeed, byResponse, driftPercent, areaPercent } = workedExample();
  const value = (what: string, column: 'baseline' | 'night'): number =>
    read(rows.find((row) => row.what.startsWith(what))![column]);

  it.each(['baseline', 'night'] as const)('gives the density that its own lines give (%s)', (column) => {
    const [T, p, x, z] = ['Temperature', 'Station', 'Mole fraction', 'Compressibility'].map((what) =>
      value(what, column),
    );
    const rho = ((p! * 28.96546e-3) / (z! * 8.314472 * T!)) * (1 - x! * (1 - 18.01528 / 28.96546));
    // The lines are printed to five or six digits, which is worth about one part in a hundred thousand.
    expect(value('Density of moist', column) / rho).toBeCloseTo(1, 4);
  });

  it('gives the need that its densities give, and the jets that follow', () => {
    const dry = value('Density of the dry', 'night') / value('Density of the dry', 'baseline');
    const moist = value('Density of moist', 'night') / value('Density of moist', 'baseline');
    const need = dry / Math.sqrt(moist);
    expect(read(needPercent)).toBeCloseTo(100 * (need - 1), 1);
    expect(read(byNeed)).toBeCloseTo(410 * need, 0);
    const p = value('Station', 'night') / value('Station', 'baseline');
    const cold = value('Temperature', 'baseline') / value('Temperature', 'night');
    const area = need * p ** 0.15 * cold ** 0.15;
    expect(read(areaPercent)).toBeCloseTo(100 * (area - 1), 1);
    expect(read(byResponse)).toBeCloseTo(410 * area, 0);
    expect(read(driftPercent)).toBeCloseTo(100 * (1 / area - 1), 1);
  });
});
