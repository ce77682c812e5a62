import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPastedHours } from '@/lib/hours/paste';
import { hostileTexts, LONG_TEXTS } from './hostile-text';
import { celsius, columnsOf, EVENING, hectopascals, lines, pasted, problem, question } from './pasting';

const metric = { temperatureUnit: 'C', pressureUnit: 'hPa' } as const;

describe('a paste that can be read in two ways', () => {
  it('asks for the first hour where there are no times', () => {
    expect(question('-10\n-11\n-12')).toBe('no-times');
    expect(question('Temp °C\n-10\n-11')).toBe('no-times');
  });

  it('asks which column is which where none is named', () => {
    const text = '18:00\t-9\t-12\n19:00\t-10\t-13';
    expect(problem(text)).toEqual({
      code: 'ask',
      questions: [{ code: 'which-column', columns: [1, 2], sample: ['-9', '-12'] }],
    });
    const hours = pasted(text, { ...metric, columns: ['time', 'temperature', 'dew-point'] });
    expect(celsius(hours)).toEqual([-9, -10]);
    expect(columnsOf(hours)).toEqual(['time', 'temperature C assumed', 'dew-point C assumed']);
    expect(lines(pasted('18\t-9\n19\t-10', { ...metric, columns: ['time', 'temperature'] }))).toEqual([
      '01-16 18:00 -9',
      '01-16 19:00 -10',
    ]);
  });

  it('asks which of two temperatures counts', () => {
    const text = 'time,temp °C,temp °F\n18:00,-10,14';
    expect(problem(text)).toMatchObject({ questions: [{ code: 'which-column', columns: [1, 2] }] });
    expect(celsius(pasted(text, { columns: ['time', 'ignored', 'temperature'] }))).toEqual([-10]);
  });

  it('asks whether a comma is a decimal mark', () => {
    expect(question('18:00,-12,5\n19:00,-13,0')).toBe('comma-could-be-decimal');
    expect(celsius(pasted('18:00,-12,5\n19:00,-13,0', { ...metric, commaIs: 'decimal' }))).toEqual([
      -12.5, -13,
    ]);
    expect(question('18:00,-12,5\n19:00,-13,0', { commaIs: 'separator' })).toBe('which-column');
    expect(question('time,temp\n18:00,-12,5')).toBe('comma-could-be-decimal');
    expect(question('-12,80\n-13,82', { startClock: '18:00' })).toBe('comma-could-be-decimal');
    expect(celsius(pasted('-12,80\n-13,82', { ...metric, startClock: '18:00', commaIs: 'decimal' }))).toEqual(
      [-12.8, -13.82],
    );
  });

  it('does not ask where a point or the header decides about the comma', () => {
    expect(celsius(pasted('18:00,-12.5\n19:00,-13', metric))).toEqual([-12.5, -13]);
    expect(celsius(pasted('time,temp,rh\n18:00,-12,85\n19:00,-13,86', metric))).toEqual([-12, -13]);
    expect(celsius(pasted('-12,5\n-13,0', { ...metric, startClock: '18:00' }))).toEqual([-12.5, -13]);
    expect(celsius(pasted('time,temp\n18:00,"-12,5"', metric))).toEqual([-12.5]);
  });

  it('asks which part of a date is the day', () => {
    const text = 'time,temp °C\n2/1/2027 18:00,-9\n2/1/2027 19:00,-10';
    expect(question(text)).toBe('day-or-month');
    expect(lines(pasted(text, { dayOrder: 'day-first' }))[0]).toBe('01-02 18:00 -9');
    expect(lines(pasted(text, { dayOrder: 'month-first' }))[0]).toBe('02-01 18:00 -9');
    expect(lines(pasted('time,temp °C\n2/2/2027 18:00,-9'))).toEqual(['02-02 18:00 -9']);
  });

  it('asks for AM or PM where 12:00 is followed by 1:00', () => {
    const text = '10:00\t-9\n11:00\t-10\n12:00\t-11\n1:00\t-12\n2:00\t-13';
    expect(question(text)).toBe('am-or-pm');
    expect(lines(pasted(text, { ...metric, clock: 'starts-pm' }))).toEqual([
      '01-16 22:00 -9',
      '01-16 23:00 -10',
      '01-17 00:00 -11',
      '01-17 01:00 -12',
      '01-17 02:00 -13',
    ]);
    expect(lines(pasted(text, { ...metric, clock: 'starts-am' })).slice(1, 4)).toEqual([
      '01-16 11:00 -10',
      '01-16 12:00 -11',
      '01-16 13:00 -12',
    ]);
    expect(lines(pasted(text, { ...metric, clock: '24-hour' })).slice(2, 4)).toEqual([
      '01-16 12:00 -11',
      '01-17 01:00 -12',
    ]);
  });

  it('asks what 0 and 1 mean as humidity', () => {
    const text = 'time,temp,rh\n18:00,-9,1\n19:00,-10,0';
    expect(question(text)).toBe('humidity-scale');
    expect(pasted(text, { humidityScale: 'ratio' }).rows[0]?.relativeHumidity).toBe(1);
    expect(pasted(text, { humidityScale: 'percent' }).rows[0]?.relativeHumidity).toBe(0.01);
  });

  it('asks all it needs to know at once where one thing does not hang on the other', () => {
    expect(question('temp,rh\n-9,1\n-10,0')).toBe('no-times+humidity-scale');
  });
});

describe('any text at all', () => {
  it('is read or refused, never thrown over, and no hour is impossible', () => {
    let read = 0;
    for (const text of [...hostileTexts(5000, 16), ...LONG_TEXTS]) {
      const result = readPastedHours(text, { ...EVENING, startClock: '18:00' });
      if (!result.ok) continue;
      read += 1;
      const { rows } = result.value;
      expect(rows.length).toBeGreaterThan(0);
      expect(rows.every(({ temperature }) => temperature > 200 && temperature < 335)).toBe(true);
      expect(rows.every(({ at }, i) => i === 0 || at > (rows[i - 1]?.at ?? 0))).toBe(true);
      expect(hectopascals(result.value).every((p) => p === null || (p >= 450 && p <= 1100))).toBe(true);
    }
    // Not all are refused: the texts are near enough to real ones.
    expect(read).toBeGreaterThan(200);
    expect(Object.keys(Object.prototype)).toEqual([]);
  }, 120_000);

  it('gives the same hours whichever separator, decimal mark and order of columns it comes in', () => {
    const hour = fc.record({ c: fc.integer({ min: -400, max: 300 }), rh: fc.integer({ min: 2, max: 100 }) });
    fc.assert(
      fc.property(
        fc.array(hour, { minLength: 1, maxLength: 30 }),
        fc.constantFrom('\t', ';'),
        fc.constantFrom('.', ','),
        fc.boolean(),
        (hours, mark, decimal, timeLast) => {
          const body = hours.map(({ c, rh }, i) => {
            const time = `${String((18 + i) % 24).padStart(2, '0')}:00`;
            const rest = [(c / 10).toFixed(1).replace('.', decimal), `${rh}`];
            return (timeLast ? [...rest, time] : [time, ...rest]).join(mark);
          });
          const header = (timeLast ? ['T', 'RH', 'Time'] : ['Time', 'T', 'RH']).join(mark);
          const read = pasted([header, ...body].join('\r\n'), metric);
          expect(celsius(read)).toEqual(hours.map(({ c }) => c / 10));
          expect(read.rows.map(({ relativeHumidity }) => relativeHumidity)).toEqual(
            hours.map(({ rh }) => rh / 100),
          );
          expect(read.skipped).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });
});
