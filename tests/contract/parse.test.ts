import { describe, expect, test } from 'vitest';
import type * as z from 'zod/mini';
import { airStateSchema } from '@/lib/contract/air';
import { eventSchema, hourSchema } from '@/lib/contract/event';
import { machineSchema } from '@/lib/contract/machine';
import { parseWith } from '@/lib/contract/parse';
import { pathPointer, pathText } from '@/lib/contract/problem';
import { TWIN } from './sent';

/** Each bad field with its words. */
function refusals(schema: z.ZodMiniType, data: unknown): Readonly<Record<string, string>> {
  const parsed = parseWith(schema, data);
  if (parsed.ok) return {};
  return Object.fromEntries(
    parsed.reason.map(({ path, reason }) => [
      pathText(path),
      reason.code === 'field' ? reason.message : reason.code,
    ]),
  );
}

describe('Reading sent data', () => {
  test('names every bad field of a machine, not only the first', () => {
    const sent = {
      ...TWIN,
      name: '  ',
      carburettors: [{ main: '410' }, { main: -5 }],
      box: [{ size: 410, count: 1.5 }, { size: 420 }],
      baseline: { air: { temperatureC: 300, pressureHpa: 985 }, judged: 'fine' },
    };
    expect(refusals(machineSchema, sent)).toEqual({
      name: 'must not be empty',
      'carburettors[0].main': 'expected a number, got "410"',
      'carburettors[1].main': 'a jet size is at least 0.1',
      'box[0].count': 'expected a whole number, got 1.5',
      'box[1].count': 'is missing',
      'baseline.air.temperatureC': 'hotter than any place on earth: expected -70 to 60 °C',
      'baseline.judged': 'expected one of "edge", "right", "size-rich", got "fine"',
    });
  });

  test('refuses a field it does not know, since a misspelt one would be silently left out', () => {
    expect(refusals(machineSchema, { ...TWIN, intakeOfsetC: 12 })).toEqual({
      '': 'unknown field: "intakeOfsetC"',
    });
  });

  test.each([
    [Number.NaN, 'a number too large to hold'],
    [Number.POSITIVE_INFINITY, 'a number too large to hold'],
    [JSON.parse('1e309'), 'a number too large to hold'],
    [null, 'null'],
    ['x'.repeat(1000), 'a long text'],
    [[1, 2], 'a list'],
    [{ deep: { deeper: 1 } }, 'an object'],
    [true, 'true'],
  ])('says what stands where a number should (%#)', (temperatureC, words) => {
    expect(refusals(airStateSchema, { temperatureC, pressureHpa: 990 })).toEqual({
      temperatureC: `expected a number, got ${words}`,
    });
  });

  test('refuses two pressures or two humidities for one air', () => {
    const two = {
      temperatureC: -8,
      pressureHpa: 985,
      seaLevelHpa: 1015,
      elevationM: 250,
      relativeHumidity: 1,
      dewPointC: -9,
    };
    const words = {
      pressureHpa: 'give one pressure: pressureHpa, altimeterHpa or seaLevelHpa',
      relativeHumidity: 'give one humidity: relativeHumidity, dewPointC or frostPointC',
    };
    expect(refusals(airStateSchema, two)).toEqual(words);
    const { elevationM: _, ...hour } = two;
    expect(refusals(hourSchema, { ...hour, time: '2027-01-16T21:00:00Z' })).toEqual(words);
  });

  test('asks for the elevation that a sea-level pressure needs', () => {
    expect(refusals(airStateSchema, { temperatureC: -8, seaLevelHpa: 1015 })).toEqual({
      elevationM: 'an altimeter setting or a sea-level pressure needs elevationM',
    });
    expect(refusals(airStateSchema, { temperatureC: -8 })).toHaveProperty('pressureHpa');
  });

  test.each([
    '2027-01-16T21:00:00-06:00',
    '2027-01-17T03:00Z',
    '2027-01-16T21:00+05:30',
    '2028-02-29T23:59:59.5Z',
  ])('takes %s as a moment', (time) => {
    expect(refusals(hourSchema, { time, temperatureC: 0 })).toEqual({});
  });

  test.each([
    '2027-01-16T21:00:00',
    '21:00',
    '2027-02-29T21:00:00Z',
    '2027-01-16T24:30:00Z',
    '2027-01-16',
    'now',
    '',
  ])('does not guess what %j means', (time) => {
    expect(refusals(hourSchema, { time, temperatureC: 0 }).time).toContain(
      'expected an ISO 8601 time with offset',
    );
  });

  test.each([
    '0000-01-01T00:00:00Z',
    '1979-12-31T23:00:00Z',
    '2200-01-01T00:00:00Z',
    '9999-12-31T23:59:59-23:59',
  ])('takes the year of %s for a slip', (time) => {
    expect(refusals(hourSchema, { time, temperatureC: 0 })).toEqual({
      time: 'expected a year from 1980 to 2199',
    });
  });

  test('knows time zones by their IANA names only', () => {
    const event = (timezone: string) => ({ name: 'Night', timezone, elevationM: 250, runs: [] });
    expect(refusals(eventSchema, event('America/Chicago'))).toEqual({});
    expect(refusals(eventSchema, event('Central Time'))).toEqual({
      timezone: 'not an IANA time zone, such as America/Chicago',
    });
  });

  test('does not let a prototype in', () => {
    const sent = JSON.parse('{"temperatureC":0,"pressureHpa":990,"__proto__":{"elevationM":1600}}');
    expect(refusals(airStateSchema, sent)).toEqual({ '': 'unknown field: "__proto__"' });
  });
});

describe('The path of a problem', () => {
  test('reads like the JSON it points into', () => {
    expect(pathText(['machines', 0, 'machine', 'box', 2, 'size'])).toBe('machines[0].machine.box[2].size');
    expect(pathText([])).toBe('');
  });

  // RFC 6901 section 5: "/" in a name is ~1 and "~" is ~0; section 6: percent-encoded in a URI fragment.
  test('is also a pointer that programs can follow', () => {
    expect(pathPointer(['hours', 3, 'time'])).toBe('#/hours/3/time');
    expect(pathPointer(['a/b', 'm~n', 'c%d'])).toBe('#/a~1b/m~0n/c%25d');
    expect(pathPointer([])).toBe('#');
  });
});
