import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { readChart } from '@/lib/store/read-chart';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { chartProblemSentence } from '@/lib/words/chart-problems';

const cells = (text: string, form: 'grid' | 'list', units = METRIC_UNITS) =>
  expectOk(readChart(text, form, units));
const problem = (text: string, form: 'grid' | 'list') => {
  const read = readChart(text, form, METRIC_UNITS);
  return read.ok ? null : read.reason;
};

describe('a chart pasted as a grid', () => {
  it('has elevations above, temperatures before, mains between, with or without a corner', () => {
    const expected = [
      { temperatureC: -20, elevationM: 0, main: 430 },
      { temperatureC: -20, elevationM: 1000, main: 400 },
      { temperatureC: 10, elevationM: 0, main: 390 },
      { temperatureC: 10, elevationM: 1000, main: 370 },
    ];
    expect(cells('\t0\t1000\n-20\t430\t400\n10\t390\t370', 'grid')).toEqual(expected);
    expect(cells('0 1000\n-20 430 400\n10 390 370', 'grid')).toEqual(expected);
    expect(cells('°C;0 m;1000 m\n−20 °C;430;400\n10 °C;390;370', 'grid')).toEqual(expected);
  });

  it('takes bare numbers in the units of the person, and units where they are written', () => {
    const [cell] = cells('0 2000\n14 400 380', 'grid', US_UNITS);
    expect(cell?.temperatureC).toBeCloseTo(-10, 9);
    const [, high] = cells('0 ft 2000 ft\n-10 C 400 380', 'grid', US_UNITS);
    // 1 ft = 0.3048 m exactly (international foot, NIST SP 811).
    expect(high).toEqual({ temperatureC: -10, elevationM: 609.6, main: 380 });
  });

  it('leaves empty cells out', () => {
    expect(cells('\t0\t1000\n-20\t430\t\n10\t-\t370', 'grid')).toHaveLength(2);
  });

  it('says which line and text it stumbled over', () => {
    expect(problem('0 1000\n-20 430 big', 'grid')).toEqual({
      code: 'bad-cell',
      line: 2,
      what: 'main',
      text: 'big',
    });
    expect(problem('\t0\tsummit\n-20\t430\t400', 'grid')).toMatchObject({ line: 1, what: 'elevation' });
    expect(problem('0 500 1000\n-20 430', 'grid')).toMatchObject({ code: 'ragged', line: 1 });
    expect(problem('', 'grid')).toEqual({ code: 'empty' });
  });
});

describe('a chart typed as a list', () => {
  it('has temperature, elevation and main in each line', () => {
    expect(cells('-20 0 430\n\n-12,5 °C; 600 m; 127,5', 'list')).toEqual([
      { temperatureC: -20, elevationM: 0, main: 430 },
      { temperatureC: -12.5, elevationM: 600, main: 127.5 },
    ]);
  });

  it('refuses what no engine runs in or with', () => {
    expect(problem('-90 0 430', 'list')).toMatchObject({ what: 'temperature' });
    expect(problem('-20 9000 430', 'list')).toMatchObject({ what: 'elevation' });
    expect(problem('-20 0 0', 'list')).toMatchObject({ what: 'main' });
    expect(problem('-20 0', 'list')).toMatchObject({ code: 'ragged', wanted: 3 });
  });
});

it('says what is wrong with any text at all, over 2,000 of them', () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.stringMatching(/^[-0-9.,;\t \n]*$/)),
      fc.constantFrom('grid' as const, 'list' as const),
      (text, form) => {
        const read = readChart(text, form, US_UNITS);
        if (read.ok) return read.value.every(({ main, temperatureC }) => main > 0 && temperatureC >= -70);
        return chartProblemSentence(read.reason).length > 10;
      },
    ),
    { numRuns: 2000, seed: 7 },
  );
});
