import { describe, expect, test } from 'vitest';
import { pathText } from '@/lib/contract/problem';
import { type ForAllHours, seriesFromJson } from '@/lib/contract/series-from-json';
import { expectOk } from '@/lib/result/result';
import { isoUtc } from '@/lib/time/zone';
import { celsiusToKelvin } from '@/lib/units/convert';
import { hour } from './sent';

const read = (hours: Parameters<typeof seriesFromJson>[0], forAll?: ForAllHours) =>
  expectOk(seriesFromJson(hours, 1600, forAll));
const refused = (hours: Parameters<typeof seriesFromJson>[0]) => {
  const series = seriesFromJson(hours, 1600);
  if (series.ok) throw new Error('expected a problem');
  return series.reason.map(({ path, reason }) => [pathText(path), reason.code]);
};

describe('Hours as they are sent', () => {
  test('are put in order of time', () => {
    const { hours } = read([hour('23:00', -20), hour('21:00', -14), hour('22:00', -17)]);
    expect(hours.map(({ temperature }) => temperature)).toEqual([-14, -17, -20].map(celsiusToKelvin));
    expect(hours.map(({ at }) => isoUtc(at))).toEqual([
      '2027-01-17T03:00:00Z',
      '2027-01-17T04:00:00Z',
      '2027-01-17T05:00:00Z',
    ]);
  });

  test('may each carry a pressure of another kind; one without is an estimate and marked so', () => {
    const { hours } = read([
      hour('20:00', -10, { pressureHpa: 840 }),
      hour('21:00', -10, { altimeterHpa: 1018 }),
      hour('22:00', -10, { seaLevelHpa: 1022 }),
      hour('23:00', -10),
    ]);
    expect(hours.map(({ pressureFrom }) => pressureFrom)).toEqual([
      'station',
      'altimeter',
      'sea-level',
      'standard',
    ]);
    expect(hours.every(({ pressure }) => pressure > 80_000 && pressure < 86_000)).toBe(true);
  });

  test('take what was said once for all of them where they do not say it themselves', () => {
    const forAll = { pressure: { kind: 'station', hpa: 838 }, relativeHumidity: 0.6 } as const;
    const { hours } = read(
      [hour('20:00', -10, { pressureHpa: 841 }), { time: '2027-01-17T03:00Z', temperatureC: -12 }],
      forAll,
    );
    expect(hours.map(({ pressure }) => pressure)).toEqual([84_100, 83_800]);
    expect(hours[0]?.relativeHumidity).toBeCloseTo(0.8, 12);
    expect(hours[1]?.relativeHumidity).toBeCloseTo(0.6, 12);
  });

  test('with a dew point are not given a second humidity', () => {
    const { hours } = read([{ time: '2027-01-17T03:00Z', temperatureC: -12, dewPointC: -12 }], {
      relativeHumidity: 0.3,
    });
    expect(hours[0]?.relativeHumidity).toBeCloseTo(1, 6);
  });

  test('with a sea-level number as station pressure at 1,600 m are refused by name', () => {
    expect(
      refused([hour('20:00', -10, { pressureHpa: 840 }), hour('21:00', -10, { pressureHpa: 1015 })]),
    ).toEqual([['hours[1].pressureHpa', 'sea-level-number-as-station']]);
  });

  test('with the same moment twice are refused, however its offset is written', () => {
    const again = { ...hour('21:00', -15), time: '2027-01-17T03:00:00Z' };
    expect(refused([hour('21:00', -14), hour('22:00', -17), again])).toEqual([
      ['hours[2].time', 'same-hour-twice'],
    ]);
  });

  test('of the night the clocks go back hold the repeated hour as two', () => {
    const { hours } = read([
      { time: '2027-11-07T01:00:00-05:00', temperatureC: -1 },
      { time: '2027-11-07T01:00:00-06:00', temperatureC: -2 },
    ]);
    expect(hours.map(({ at }) => isoUtc(at))).toEqual(['2027-11-07T06:00:00Z', '2027-11-07T07:00:00Z']);
  });

  test('may be none', () => {
    expect(read([]).hours).toEqual([]);
  });

  test('are not changed by being read', () => {
    const sent = [hour('23:00', -20), hour('21:00', -14)];
    const copy = structuredClone(sent);
    seriesFromJson(sent, 1600);
    expect(sent).toEqual(copy);
  });
});
