import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { nightAround, type SunPlace, sunEvents } from '@/lib/time/sun';
import { readInstant } from '@/lib/time/zone';

const at = (iso: string) => expectOk(readInstant(iso));

// US Naval Observatory, "Complete Sun and Moon Data for One Day" (aa.usno.navy.mil), UTC, printed to the minute.
const USNO: readonly {
  readonly place: string;
  readonly where: SunPlace;
  readonly date: string;
  readonly times: readonly [string, string, string, string];
}[] = [
  {
    place: 'Kyiv',
    where: { latitude: 50.45466, longitude: 30.5238 },
    date: '2026-01-18',
    times: ['05:13', '05:50', '14:27', '15:04'],
  },
  {
    place: 'Kyiv',
    where: { latitude: 50.45466, longitude: 30.5238 },
    date: '2026-06-21',
    times: ['01:01', '01:46', '18:13', '18:59'],
  },
  {
    place: 'Stockholm',
    where: { latitude: 59.32938, longitude: 18.06871 },
    date: '2026-01-25',
    times: ['06:25', '07:13', '14:48', '15:36'],
  },
  {
    place: 'Stockholm',
    where: { latitude: 59.32938, longitude: 18.06871 },
    date: '2026-12-21',
    times: ['06:48', '07:43', '13:48', '14:44'],
  },
  {
    place: 'Istanbul',
    where: { latitude: 41.01384, longitude: 28.94966 },
    date: '2026-03-20',
    times: ['03:41', '04:08', '16:16', '16:44'],
  },
  {
    place: 'Reykjavík',
    where: { latitude: 64.13548, longitude: -21.89541 },
    date: '2026-12-21',
    times: ['10:03', '11:22', '15:29', '16:49'],
  },
  {
    place: 'Tromsø',
    where: { latitude: 69.6489, longitude: 18.95508 },
    date: '2026-01-25',
    times: ['07:26', '09:03', '12:51', '14:28'],
  },
];

/** Printed minutes are rounded (30 s); the rest is for refraction and method. */
const USNO_TOLERANCE_S = 45;

const tromso: SunPlace = { latitude: 69.6489, longitude: 18.95508 };

describe('sunset and dusk', () => {
  it.each(USNO)('at $place on $date agree with the US Naval Observatory', ({ where, date, times }) => {
    const events = sunEvents({ from: at(`${date}T00:00Z`), to: at(`${date}T23:59:59Z`) }, where);
    expect(events.map((event) => event.kind)).toEqual(['dawn', 'sunrise', 'sunset', 'dusk']);
    for (const [i, event] of events.entries())
      expect(Math.abs(event.at - at(`${date}T${times[i]}:00Z`)) / 1000).toBeLessThanOrEqual(USNO_TOLERANCE_S);
  });

  it.each([
    ['2015-01-01', '07:22', '16:47'],
    ['2015-01-03', '07:22', '16:49'],
    ['2015-08-02', '05:00', '19:13'],
  ])('at Golden, Colorado on %s agree with the US Naval Observatory', (date, rise, set) => {
    // USNO, "Rise, Set, and Twilight Times", 39.742476 N, 105.1786 W, UTC-7, as recorded in the tests of pvlib-python.
    const place = { latitude: 39.742476, longitude: -105.1786 };
    const events = sunEvents({ from: at(`${date}T00:00-07:00`), to: at(`${date}T23:59-07:00`) }, place);
    const find = (kind: string) => events.find((event) => event.kind === kind)?.at ?? Number.NaN;
    expect(Math.abs(find('sunrise') - at(`${date}T${rise}-07:00`)) / 1000).toBeLessThanOrEqual(
      USNO_TOLERANCE_S,
    );
    expect(Math.abs(find('sunset') - at(`${date}T${set}-07:00`)) / 1000).toBeLessThanOrEqual(
      USNO_TOLERANCE_S,
    );
  });
});

describe('the night around a moment', () => {
  const chicago: SunPlace = { latitude: 45, longitude: -93 };

  it('is the same night from the afternoon before to the morning after', () => {
    const evening = nightAround(at('2027-01-16T15:00-06:00'), chicago);
    expect(nightAround(at('2027-01-17T03:00-06:00'), chicago)).toEqual(evening);
    expect(nightAround(at('2027-01-17T11:00-06:00'), chicago)).toEqual(evening);
    expect(nightAround(at('2027-01-17T15:00-06:00'), chicago)).not.toEqual(evening);
  });

  it('runs sunset, dusk, dawn, sunrise', () => {
    const { sunset, dusk, dawn, sunrise, allDay } = nightAround(at('2027-01-16T22:00-06:00'), chicago);
    const order = [sunset, dusk, dawn, sunrise].map((time) => time ?? Number.NaN);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect((order[3] ?? 0) - (order[0] ?? 0)).toBeLessThan(16 * HOUR_MS);
    expect(allDay).toBeNull();
  });

  it('has no sunset in polar night, but a dusk', () => {
    // USNO for Tromsø, 3 January 2026: "Object continuously below the Horizon", civil twilight 08:24 to 13:14 UTC.
    const night = nightAround(at('2026-01-03T20:00Z'), tromso);
    expect(night).toMatchObject({ sunset: null, sunrise: null, allDay: 'down' });
    expect(Math.abs((night.dusk ?? Number.NaN) - at('2026-01-03T13:14Z')) / 1000).toBeLessThanOrEqual(
      USNO_TOLERANCE_S,
    );
  });

  it('at 69.65 N on 21 December has no sunrise anywhere in the day', () => {
    const events = sunEvents({ from: at('2026-12-21T00:00Z'), to: at('2026-12-21T23:59Z') }, tromso);
    expect(events.map((event) => event.kind)).toEqual(['dawn', 'dusk']);
    // USNO: "Begin Civil Twilight" 08:31.
    expect(Math.abs((events[0]?.at ?? Number.NaN) - at('2026-12-21T08:31Z')) / 1000).toBeLessThanOrEqual(
      USNO_TOLERANCE_S,
    );
  });

  it('has neither at 78 N in January, and the sun stays up in June', () => {
    // USNO for Longyearbyen, 3 January and 21 June 2026: continuously below the twilight limit; continuously above the horizon.
    const north: SunPlace = { latitude: 78.22334, longitude: 15.64689 };
    expect(nightAround(at('2026-01-03T20:00Z'), north)).toEqual({
      sunset: null,
      dusk: null,
      dawn: null,
      sunrise: null,
      allDay: 'down',
    });
    expect(nightAround(at('2026-06-21T20:00Z'), north)).toEqual({
      sunset: null,
      dusk: null,
      dawn: null,
      sunrise: null,
      allDay: 'up',
    });
  });

  it('lists each event of several nights once, at the date line too', () => {
    const place: SunPlace = { latitude: -17.7, longitude: 179.9 };
    const from = at('2027-01-10T00:00Z');
    const events = sunEvents({ from, to: instant(from + 4 * 24 * HOUR_MS) }, place);
    expect(events).toHaveLength(16);
    expect(events.every((event, i) => i === 0 || event.at > (events[i - 1]?.at ?? 0))).toBe(true);
  });
});
