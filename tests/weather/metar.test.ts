import { describe, expect, it } from 'vitest';
import { seededUniform } from '@/lib/plan/stratified';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant, MINUTE_MS } from '@/lib/time/instant';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { readMetar } from '@/lib/weather/metar/read-metar';

const at = (iso: string) => instant(Date.parse(iso));
/** Twenty minutes after the reports below. */
const NOW = at('2027-01-16T23:15:00Z');
const REPORT = 'KXYZ 162255Z 18004KT 10SM CLR M11/M14 A3005';

function read(text: string, now = NOW) {
  const { temperature, dewPoint, altimeter, ...rest } = expectOk(readMetar(text, now));
  return {
    ...rest,
    celsius: kelvinToCelsius(temperature),
    dewPointC: dewPoint === null ? null : kelvinToCelsius(dewPoint),
    hpa: altimeter === null ? null : pascalToHectopascal(altimeter),
  };
}
const refusal = (text: string, now = NOW) => {
  const answer = readMetar(text, now);
  return answer.ok ? null : answer.reason;
};

describe('A report as it is broadcast', () => {
  it('is read with its tenths: Fort Lauderdale as recorded in tests/fixtures/weather', () => {
    // The service decoded this report to 22.8 °C, 18.3 °C, 101860 Pa.
    const text =
      'KFLL 022353Z 02004KT 10SM FEW026 BKN055 23/18 A3008 RMK AO2 SLP187 60000 T02280183 10244 20228 53008 $';
    expect(read(text, at('2022-03-03T00:10:00Z'))).toEqual({
      station: 'KFLL',
      at: at('2022-03-02T23:53:00Z'),
      celsius: expect.closeTo(22.8, 9),
      dewPointC: expect.closeTo(18.3, 9),
      hpa: expect.closeTo(1018.6, 1),
      // Four knots.
      wind: expect.closeTo(2.06, 2),
    });
  });

  it('is read in the form of the rest of the world', () => {
    // The example of ICAO Annex 3, table A3-2 (from memory).
    const text =
      'METAR YUDO 221630Z 24004MPS 0600 R12/1000U DZ FG SCT010 OVC020 17/16 Q1018 BECMG TL1700 0800 FG BECMG AT1800 9999 NSW=';
    expect(read(text, at('2027-03-22T17:00:00Z'))).toMatchObject({
      station: 'YUDO',
      celsius: expect.closeTo(17, 9),
      hpa: 1018,
      wind: 4,
    });
  });

  it.each([
    ['SPECI ENXX 162250Z AUTO VRB02KT 9999NDV ///010/// M23/M26 Q1031 RMK WIND 670FT 00000KT', -23],
    ['METAR COR CYXX 162300Z 27008G18KT 240V300 1 1/2SM -SN BLSN VV004 M07/M09 A2967 RMK SN8 SLP066', -7],
    ['EFXX 162250Z 00000KT CAVOK M31/M34 Q1044 NOSIG', -31],
    ['LOWX 162250Z 27005KT 9000 R26/29//95 SHSN FEW012CB BKN025 00/M01 Q1009 TEMPO 3000', 0],
    ['kxyz 162255z 00000kt 10sm clr m00/m02 a2992', 0],
    ['KXYZ 162255Z 18004KT 10SM CLR M11/M14 A3005 RMK AO2 T11061139', -10.6],
    ['KXYZ 162255Z /////KT //// // ////// M11/// Q////', -11],
    ['KXYZ 162255Z 18012KMH 10SM M11/M14 Q1017 A3005', -11],
  ])('is read: %s', (text, celsius) => expect(read(text).celsius).toBeCloseTo(celsius, 9));

  it('has no pressure, dew point or wind where none was observed', () => {
    expect(read('KXYZ 162255Z /////KT //// M11/// Q////')).toMatchObject({
      hpa: null,
      dewPointC: null,
      wind: null,
    });
  });

  it.each([
    ['', { code: 'empty' }],
    ['METAR', { code: 'empty' }],
    ['it is cold here', { code: 'no-report' }],
    ['TAF KXYZ 161730Z 1618/1724 18004KT P6SM SKC', { code: 'no-report' }],
    [`${REPORT} ${REPORT}`, { code: 'several-reports' }],
    ['KXYZ 162260Z 18004KT M11/M14 A3005', { code: 'no-such-time', group: '162260Z' }],
    ['KXYZ 322255Z 18004KT M11/M14 A3005', { code: 'no-such-time', group: '322255Z' }],
    ['KXYZ 162255Z NIL', { code: 'nil' }],
    ['KXYZ 162255Z 18004KT 10SM CLR A3005', { code: 'no-temperature' }],
    ['KXYZ 162255Z 18004KT 10SM CLR ///// A3005', { code: 'no-temperature' }],
    ['KXYZ 162255Z 18004KT 10SM CLR -11/-14 A3005', { code: 'unknown-group', group: '-11/-14' }],
    ['KXYZ 162255Z 18004KT 10SM CLR M11/M14 A30.05', { code: 'unknown-group', group: 'A30.05' }],
    ['KXYZ 162255Z 18004KT M11/M14 A3005 HELLO', { code: 'unknown-group', group: 'HELLO' }],
    [`${REPORT} RMK T10611139`, { code: 'disagrees', group: 'T10611139' }],
    ['KXYZ 162255Z M11/M14 M01/M04 A3005', { code: 'disagrees', group: 'M01/M04' }],
    ['KXYZ 162255Z M11/M14 Q1017 A2905', { code: 'disagrees', group: 'A2905' }],
    ['KXYZ 162255Z M11/M14 A2405', { code: 'implausible', group: 'A2405' }],
    ['KXYZ 162255Z 71/14 A3005', { code: 'implausible', group: '71/14' }],
    ['KXYZ 162255Z M14/M11 A3005', { code: 'implausible', group: 'M14/M11' }],
  ])('is refused with its reason: %s', (text, reason) => expect(refusal(text)).toEqual(reason));
});

describe('The day and time of a report', () => {
  it('is the last one there was, also over the end of a month and a year', () => {
    expect(read('KXYZ 312355Z M11/M14', at('2027-01-01T00:20:00Z')).at).toBe(at('2026-12-31T23:55:00Z'));
    expect(read('KXYZ 282355Z M11/M14', at('2027-03-01T00:20:00Z')).at).toBe(at('2027-02-28T23:55:00Z'));
  });

  it('may be some minutes ahead, and not three hours ago', () => {
    expect(read('KXYZ 162330Z M11/M14').at).toBe(at('2027-01-16T23:30:00Z'));
    expect(refusal('KXYZ 162005Z M11/M14')).toEqual({ code: 'too-old', at: at('2027-01-16T20:05:00Z') });
    expect(refusal('KXYZ 170005Z M11/M14')).toEqual({ code: 'too-old', at: at('2026-12-17T00:05:00Z') });
  });
});

describe('Any text', () => {
  it('is read or refused, and never thrown over', () => {
    const uniform = seededUniform(11, 1);
    const letters = `${REPORT} RMK/QAMT-+=\n\t 0123456789é\u0000`;
    for (let i = 0; i < 2000; i++) {
      const text = [...REPORT].map((c) =>
        uniform() < 0.1 ? letters[Math.floor(uniform() * letters.length)] : c,
      );
      const answer = readMetar(text.join(''), NOW);
      if (answer.ok) {
        expect(Number.isFinite(answer.value.temperature)).toBe(true);
        expect(NOW - answer.value.at).toBeLessThanOrEqual(3 * HOUR_MS);
        expect(answer.value.at - NOW).toBeLessThanOrEqual(30 * MINUTE_MS);
      } else expect(answer.reason.code).toMatch(/^[a-z-]+$/);
    }
  });
});
