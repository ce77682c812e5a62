import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { kelvinToCelsius, kelvinToFahrenheit, metreToFeet, pascalToHectopascal } from '@/lib/units/convert';
import {
  readElevation,
  readNumber,
  readPercent,
  readPressure,
  readTemperature,
  readTemperatureStep,
} from '@/lib/units/entry';

const celsius = (text: string) => kelvinToCelsius(expectOk(readTemperature(text, 'C')));
const fahrenheit = (text: string) => kelvinToFahrenheit(expectOk(readTemperature(text, 'F')));
const hectopascals = (text: string, unit: 'inHg' | 'hPa' | 'kPa' | 'mbar' = 'hPa') =>
  pascalToHectopascal(expectOk(readPressure(text, unit)));

describe('a typed temperature', () => {
  it.each([
    ['-12.5', -12.5],
    ['−12,5', -12.5],
    ['–12.5', -12.5],
    ['- 12.5', -12.5],
    ['12.5-', -12.5],
    ['12.5 −', -12.5],
    ['－１２．５', -12.5],
    ['+3', 3],
    ['3+', 3],
    ['0', 0],
    ['.5', 0.5],
    [',5', 0.5],
    ['5.', 5],
    ['  -7\u00a0', -7],
    ['-7 °C', -7],
    ['-7\u00a0°C', -7],
    ['-7\u202f℃', -7],
    ['-7ºC', -7],
    ['-7 deg C', -7],
    ['-7 celsius', -7],
    ['-7°', -7],
    ['-7c', -7],
    ['1e1', 10],
  ])('%j is %d °C', (text, expected) => {
    expect(celsius(text)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['+18F', 18],
    ['10 °F', 10],
    ['-10F', -10],
    ['-10 ℉', -10],
    ['18-', -18],
    ['-40 °C', -40],
    ['263.15 K', 14],
  ])('%j is %d °F where degrees Fahrenheit are typed', (text, expected) => {
    expect(fahrenheit(text)).toBeCloseTo(expected, 9);
  });

  it('counts a unit that was typed above the one that was chosen', () => {
    expect(celsius('14F')).toBeCloseTo(-10, 9);
    expect(fahrenheit('-10 °C')).toBeCloseTo(14, 9);
  });

  it('never reads minus zero', () => {
    expect(expectOk(readNumber('-0'))).toBe(0);
    expect(Object.is(expectOk(readNumber('-0')), 0)).toBe(true);
  });

  it('refuses an empty field', () => {
    for (const text of ['', '   ', '\u00a0', '\t\n'])
      expect(readTemperature(text, 'C')).toEqual({ ok: false, reason: { code: 'empty' } });
  });

  it.each([
    'NaN',
    'Infinity',
    '-∞',
    'abc',
    '--5',
    '-5-',
    '5-6',
    '12 34',
    '1.2.3',
    '1,2,3',
    '1.600.5.0',
    '-',
    '°C',
    '5 5 °C',
    '0x10',
    '٣',
    '<script>',
    '1'.repeat(100),
  ])('refuses %j as no number', (text) => {
    const read = readTemperature(text, 'C');
    expect(read.ok).toBe(false);
    expect(!read.ok && ['not-a-number', 'unknown-unit'].includes(read.reason.code)).toBe(true);
  });

  it('refuses a number too large to hold', () => {
    for (const text of ['1e309', '-1e309', '9e999'])
      expect(readTemperature(text, 'F')).toEqual({ ok: false, reason: { code: 'too-large', text } });
  });

  it('refuses a unit of something else and names it', () => {
    for (const [text, unit] of [
      ['5 m', 'm'],
      ['29.92 inHg', 'inhg'],
      ['5 constructor', 'constructor'],
      ['5 __proto__', '__proto__'],
    ])
      expect(readTemperature(text!, 'C')).toEqual({ ok: false, reason: { code: 'unknown-unit', unit } });
  });
});

describe('a typed difference of temperature', () => {
  it('has no freezing point: 18 °F warmer is 10 K', () => {
    expect(expectOk(readTemperatureStep('18F', 'C'))).toBeCloseTo(10, 12);
    expect(expectOk(readTemperatureStep('+18', 'F'))).toBeCloseTo(10, 12);
    expect(expectOk(readTemperatureStep('-5 °C', 'F'))).toBeCloseTo(-5, 12);
    expect(expectOk(readTemperatureStep('30 K', 'F'))).toBeCloseTo(30, 12);
  });
});

describe('a typed pressure', () => {
  it.each([
    ['29.92 inHg', 1013.2076],
    ['29.92 in Hg', 1013.2076],
    ['29.92"', 1013.2076],
    ['29,92 inHg', 1013.2076],
    ['1013 hPa', 1013],
    ['1013 mbar', 1013],
    ['1013 mb', 1013],
    ['101.3kPa', 1013],
    ['101,3 kPa', 1013],
    ['101325 Pa', 1013.25],
    ['760 mmHg', 1013.25024],
    ['1.013 bar', 1013],
  ])('%j is %d hPa', (text, expected) => {
    // NIST SP 811 (2008), appendix B.8, for mercury; four decimals of hPa.
    expect(hectopascals(text)).toBeCloseTo(expected, 3);
  });

  it.each([
    ['1,013', 'hPa', 1013],
    ['1.013', 'hPa', 1013],
    ['1 013', 'hPa', 1013],
    ['1,013.25', 'hPa', 1013.25],
    ['1.013,25', 'hPa', 1013.25],
    ['29,921', 'inHg', 1013.2415],
    ['101,325', 'kPa', 1013.25],
    ['101,325 Pa', 'hPa', 1013.25],
    ['980.125', 'hPa', 980.125],
    ['980,125', 'hPa', 980.125],
  ] as const)('%j with %s chosen is %d hPa: the reading that can be a pressure', (text, unit, expected) => {
    expect(hectopascals(text, unit)).toBeCloseTo(expected, 3);
  });

  it('leaves the range to the caller: 5 hPa is read as 5 hPa', () => {
    expect(hectopascals('5')).toBe(5);
  });
});

describe('a typed elevation', () => {
  it.each([
    ['1,600 m', 1600],
    ['1.600 m', 1600],
    ['1 600 m', 1600],
    ['1\u202f600 m', 1600],
    ["1'600 m", 1600],
    ['1600m', 1600],
    ['1600', 1600],
    ['5250ft', 1600.2],
    ['5,250 feet', 1600.2],
    ["5250'", 1600.2],
    ['5250′', 1600.2],
    ['-86 m', -86],
    ['16,5', 16.5],
    ['0.305', 0.305],
  ])('%j is %d m', (text, expected) => {
    expect(expectOk(readElevation(text, 'm'))).toBeCloseTo(expected, 6);
  });

  it('takes the chosen unit where none is typed', () => {
    expect(metreToFeet(expectOk(readElevation('5,250', 'ft')))).toBeCloseTo(5250, 9);
  });
});

describe('a typed percentage', () => {
  it('is a ratio, with or without its sign', () => {
    expect(expectOk(readPercent('80'))).toBeCloseTo(0.8, 12);
    expect(expectOk(readPercent('80 %'))).toBeCloseTo(0.8, 12);
    expect(expectOk(readPercent('2,5%'))).toBeCloseTo(0.025, 12);
    expect(expectOk(readPercent('-1 %'))).toBeCloseTo(-0.01, 12);
  });
});

describe('a typed bare number', () => {
  it('is refused where a comma may be a decimal or a thousands mark', () => {
    expect(readNumber('1,600')).toEqual({
      ok: false,
      reason: { code: 'ambiguous-mark', text: '1,600', decimal: 1.6, thousands: 1600 },
    });
  });

  it('is read where it is clear', () => {
    expect(expectOk(readNumber('410'))).toBe(410);
    expect(expectOk(readNumber('1.25'))).toBe(1.25);
    expect(expectOk(readNumber('1,25'))).toBe(1.25);
    expect(expectOk(readNumber('0,125'))).toBe(0.125);
    expect(expectOk(readNumber('1 600'))).toBe(1600);
    expect(expectOk(readNumber('1,234,567'))).toBe(1_234_567);
  });

  it('has no unit', () => {
    expect(readNumber('410 hPa')).toEqual({ ok: false, reason: { code: 'unknown-unit', unit: 'hpa' } });
  });
});

describe('any text at all', () => {
  it('is read as a finite number or refused in one of the known ways', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        for (const read of [
          readTemperature(text, 'F'),
          readTemperatureStep(text, 'C'),
          readPressure(text, 'inHg'),
          readElevation(text, 'ft'),
          readPercent(text),
          readNumber(text),
        ])
          expect(
            read.ok
              ? Number.isFinite(read.value)
              : ['empty', 'not-a-number', 'too-large', 'ambiguous-mark', 'unknown-unit'].includes(
                  read.reason.code,
                ),
          ).toBe(true);
      }),
      { numRuns: 2000, seed: 11 },
    );
  });

  it('made of signs, digits and marks never throws', () => {
    const part = fc.constantFrom(
      '-',
      '−',
      '+',
      '.',
      ',',
      ' ',
      "'",
      '°',
      'C',
      'F',
      'e',
      '0',
      '1',
      '9',
      '%',
      '999999999',
    );
    fc.assert(
      fc.property(fc.array(part, { maxLength: 12 }), (parts) => {
        const read = readPressure(parts.join(''), 'hPa');
        expect(read.ok ? Number.isFinite(read.value) : read.reason.code.length > 0).toBe(true);
      }),
      { numRuns: 5000, seed: 12 },
    );
  });

  it('of a hundred thousand characters is refused at once', () => {
    expect(readNumber('1'.repeat(100_000)).ok).toBe(false);
    expect(readNumber('1 '.repeat(50_000)).ok).toBe(false);
  });

  it('written with point or comma, sign in front or behind, reads the same', () => {
    fc.assert(
      fc.property(fc.integer({ min: -6999, max: 5999 }), (hundredths) => {
        const size = (Math.abs(hundredths) / 100).toFixed(2);
        const sign = hundredths < 0 ? '-' : '';
        for (const text of [
          `${sign}${size}`,
          `${sign}${size.replace('.', ',')}`,
          `${size}${sign}`,
          `${sign.replace('-', '−')}${size} °C`,
        ])
          expect(celsius(text)).toBeCloseTo(hundredths / 100, 9);
      }),
      { numRuns: 300, seed: 13 },
    );
  });
});
