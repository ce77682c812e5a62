import { describe, expect, it } from 'vitest';
import { forecastAddress, forecastQuestion } from '@/lib/night/forecast-question';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { chicago } from '@/tests/night/night-case';
import { followedDemo } from '@/tests/support/followed-demo';

const AFTERNOON = chicago('2027-01-16', '15:20');
const { event } = followedDemo(chicago('2027-01-16', '12:00'));
const from = (now: number) => isoUtc(forecastQuestion(event, instant(now)).from);

describe('the hours a night asks for', () => {
  it('begin six hours before the first run at 19:00 and reach six hours past the last', () => {
    const { hours } = forecastQuestion(event, AFTERNOON);
    expect(from(AFTERNOON)).toBe('2027-01-16T19:00:00Z');
    expect(instant(chicago('2027-01-16', '13:00') + hours * HOUR_MS)).toBeGreaterThanOrEqual(
      chicago('2027-01-17', '06:30'),
    );
  });

  it('begin with the morning where it is still morning, so that a reading then finds its hour', () => {
    expect(from(chicago('2027-01-16', '08:40'))).toBe('2027-01-16T13:00:00Z');
  });

  it('keep the evening when the night has begun', () => {
    expect(from(chicago('2027-01-16', '23:30'))).toBe('2027-01-16T19:00:00Z');
  });

  it('leave out the days before an event a week ahead', () => {
    expect(from(chicago('2027-01-09', '12:00'))).toBe('2027-01-16T01:00:00Z');
  });

  it('go to our own address with the place and the height of the track, or nowhere without a place', () => {
    const address = new URL(forecastAddress(event, AFTERNOON) ?? '', 'http://here');
    expect(address.pathname).toBe('/api/forecast');
    expect(Object.fromEntries(address.searchParams)).toMatchObject({
      lat: '47.42',
      lon: '-93.61',
      elevation: '402.336',
      from: '2027-01-16T19:00:00Z',
    });
    const { place: _, ...placeless } = event.event;
    expect(forecastAddress({ ...event, event: placeless }, AFTERNOON)).toBeNull();
  });
});
