// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { NearbyStations } from '@/components/reading/nearby-stations';
import type { ReadingDesk } from '@/components/reading/use-reading-desk';
import { type ReadingJson, readingSchema } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { type NightRecords, nightFrom } from '@/lib/night/night';
import { withReading } from '@/lib/night/stored-readings';
import { correctHours } from '@/lib/plan/readings';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import type { ObservationsJson } from '@/lib/weather/observations-json';
import { planNight } from '@/tests/support/plan-night';
import { chicago, demoRecords } from '../night/night-case';

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const NOW = chicago('2027-01-16', '19:40');
const PLACE = { name: 'Lake', latitude: 46.79, longitude: -92.1 };
const records: NightRecords = (() => {
  const demo = demoRecords(NOW);
  const { event } = demo.event.value;
  return {
    ...demo,
    event: { ...demo.event, value: { ...demo.event.value, event: { ...event, place: PLACE } } },
  };
})();

/** Fake Lake, 8 km away, 98 m above the track at 402 m, a quarter of an hour ago. */
const ANSWER: ObservationsJson = {
  observations: [
    {
      station: 'KXYZ',
      name: 'Fake Lake',
      latitude: 46.86,
      longitude: -92.1,
      elevationM: 500.336,
      distanceM: 7800,
      time: '2027-01-17T01:25:00Z',
      temperatureC: -11,
      dewPointC: -14,
      altimeterHpa: 1018,
      windMs: 2,
    },
  ],
  leftOut: [{ station: 'KOLD', code: 'too-old' }],
  attribution: 'Weather stations: US National Weather Service',
  attributionUrl: 'https://www.weather.gov/',
};

function show(given = records) {
  const night = expectOk(nightFrom(given));
  const planned = {
    night,
    plan: expectOk(planNight(night, NOW)),
    now: NOW,
    voice: { zone: 'America/Chicago', units: METRIC_UNITS },
  };
  const keep = vi.fn<(reading: ReadingJson) => Promise<undefined>>(async () => undefined);
  const desk: ReadingDesk = { news: null, dismissNews: () => {}, keep, remove: async () => undefined };
  render(<NearbyStations planned={planned} units={METRIC_UNITS} desk={desk} />);
  return { keep, user: userEvent.setup({ delay: null }), night };
}

function answering(body: unknown, status = 200) {
  const fetch = vi.fn(async (_path: string) => Response.json(body, { status }));
  vi.stubGlobal('fetch', fetch);
  return fetch;
}

const plainOf = (text: string | null) => (text ?? '').replaceAll('\u00a0', ' ');

describe('A station nearby', () => {
  it('is asked for by a tap and never by itself', async () => {
    const fetch = answering(ANSWER);
    const { user } = show();
    expect(fetch).not.toHaveBeenCalled();
    await user.click(screen.getByRole('button', { name: 'Look for stations nearby' }));
    await screen.findByText(/Fake Lake/);
    expect(fetch.mock.calls[0]?.[0]).toBe('/api/observations?lat=46.79&lon=-92.1');
  });

  it('is offered with its name, distance, height and age, and used only when taken', async () => {
    answering(ANSWER);
    const { user, keep, night } = show();
    await user.click(screen.getByRole('button', { name: 'Look for stations nearby' }));
    const offer = await screen.findByText(/Fake Lake/);
    expect(plainOf(offer.textContent)).toMatch(
      /^KXYZ, Fake Lake: 7\.8 km away, 98 m higher, 15 minutes ago\. Here that is −10\.4 °C, give or take 2\.\d °C, and station pressure 971 hPa\.$/,
    );
    screen.getByText('KOLD has been silent for hours: left out.');
    screen.getByText(/US National Weather Service/);
    expect(keep).not.toHaveBeenCalled();
    await user.click(screen.getByRole('button', { name: 'Use KXYZ as a reading' }));
    const reading = readingSchema.parse(keep.mock.calls[0]?.[0]);
    // 98 m down at 6.5 K/km.
    expect(reading).toMatchObject({ from: 'KXYZ', temperatureC: -10.36, time: '2027-01-17T01:25:00Z' });
    expect(reading.temperatureSdK).toBeGreaterThan(1.5);
    const value = withReading(night.records.event.value, reading);
    cleanup();
    const again = show({ ...records, event: { ...records.event, value } });
    await again.user.click(screen.getByRole('button', { name: 'Look for stations nearby' }));
    await screen.findByText('Taken: it is among the readings.');
  });

  it('that cannot be asked is told in words, with another way', async () => {
    answering({ detail: 'No weather station is known near this place.' }, 422);
    const { user } = show();
    await user.click(screen.getByRole('button', { name: 'Look for stations nearby' }));
    await screen.findByText(/No weather station is known/);
  });
});

describe('A pasted report', () => {
  const paste = async (text: string) => {
    const shown = show();
    await shown.user.type(screen.getByLabelText('Airfield report (METAR)'), text);
    await shown.user.click(screen.getByRole('button', { name: 'Read the report' }));
    return shown;
  };

  it('is offered with where it lies as far as that was told', async () => {
    const { user, keep } = await paste('KXYZ 170055Z 18004KT 10SM CLR M11/M14 A3005');
    expect(plainOf((await screen.findByText(/^KXYZ:/)).textContent)).toMatch(
      /^KXYZ: distance not told, height not told, 45 minutes ago\. Here that is −11\.0 °C, give or take 3\.0/,
    );
    await user.click(screen.getByRole('button', { name: 'Use KXYZ as a reading' }));
    expect(keep.mock.calls[0]?.[0]).toMatchObject({ from: 'KXYZ', temperatureC: -11 });
  });

  it('that is none is refused in words and stays to be mended', async () => {
    const { keep } = await paste('-11 and clear');
    await screen.findByText(/does not begin as a report does/);
    expect(screen.getByLabelText<HTMLTextAreaElement>('Airfield report (METAR)').value).toBe('-11 and clear');
    expect(keep).not.toHaveBeenCalled();
  });
});

describe('Readings of a station', () => {
  const night = expectOk(nightFrom(records));
  const json = (id: string, minutes: number, sd?: number): ReadingJson => ({
    id,
    time: new Date(NOW - minutes * 60_000).toISOString(),
    temperatureC: -14,
    confirmed: false,
    ...(sd === undefined ? {} : { from: 'KXYZ', temperatureSdK: sd }),
  });
  const heard = (...readings: readonly ReadingJson[]) =>
    correctHours({ series: night.series, readings: readings.map(readingFromJson), now: NOW }).trackAt(
      Float64Array.of(NOW),
    );

  it('move the night less than a thermometer at the track', () => {
    const [none, station, track] = [heard(), heard(json('a', 5, 2.2)), heard(json('a', 5))];
    const moved = (by: typeof none) => Math.abs(by.temperature[0]! - none.temperature[0]!);
    expect(moved(station)).toBeGreaterThan(0);
    expect(moved(station)).toBeLessThan(moved(track));
    expect(station.temperatureSd[0]!).toBeGreaterThan(track.temperatureSd[0]!);
  });

  it('tell no more when the same station has told it ten times', () => {
    const often = heard(...Array.from({ length: 10 }, (_, i) => json(`r${i}`, 5 + i, 2.2)));
    const once = heard(json('a', 5, 2.2));
    expect(often.temperatureSd[0]!).toBeGreaterThan(once.temperatureSd[0]! - 0.05);
  });
});
