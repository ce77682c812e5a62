// @vitest-environment jsdom
import { cleanup, configure, screen, waitFor } from '@testing-library/react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { NightRoom } from '@/components/night/night-room';
import { DEMO_EVENT_ID } from '@/lib/night/living-demo';
import { roomOnStore } from '@/tests/support/room-on-store';
import { chicago } from './night-case';

configure({ asyncUtilTimeout: 5000 });

beforeEach(() => {
  vi.useFakeTimers({ now: chicago('2027-01-16', '17:50'), toFake: ['Date'] });
  window.location.hash = '';
});

// After the clock is set: the database opens by it.
const room = roomOnStore();

async function openAt(clock: string) {
  cleanup();
  vi.setSystemTime(chicago('2027-01-16', clock));
  room.show(<NightRoom />);
  await screen.findByRole('region', { name: 'Next' });
}

const line = () => screen.queryByText(/^Read the thermometer (at \d\d:\d\d|now): it would tell/);

async function keepReadings(readings: readonly { readonly time: string; readonly temperatureC: number }[]) {
  const stored = await room.store.get('events', DEMO_EVENT_ID);
  if (stored === null) throw new Error('the demo event must be there');
  const named = readings.map((reading) => ({ id: reading.time, confirmed: false, ...reading }));
  await room.store.put('events', DEMO_EVENT_ID, { ...stored.value, readings: named }, stored.revision);
}

// Round 1 starts at 19:00; a swap takes 15 minutes, reading and typing ten.
describe('The line that asks for a reading', () => {
  it('comes when it is useful, goes once read, comes back when that is undone, and goes when it is late', async () => {
    await openAt('17:50');
    expect(line()).toBeNull();
    await openAt('18:15');
    expect(line()?.textContent?.replaceAll('\u00a0', ' ')).toMatch(
      /^Read the thermometer at 18:35: it would tell the temperature of Round 1 to ±\d\.\d °F, not ±\d\.\d °F\. Enter what it says$/,
    );
    expect(screen.getByRole('link', { name: 'Enter what it says' }).getAttribute('href')).toBe('#reading');
    await keepReadings([{ time: '2027-01-16T18:15:00-06:00', temperatureC: -9 }]);
    await waitFor(() => expect(line()).toBeNull());
    await openAt('18:30');
    expect(line()).toBeNull();
    await keepReadings([]);
    await waitFor(() => expect(line()).not.toBeNull());
    await openAt('18:50');
    expect(line()?.textContent ?? '').not.toMatch(/Round 1 /);
  });

  it('leads to the form over the view at the track', async () => {
    window.location.hash = '#track';
    await openAt('18:40');
    expect(line()?.textContent).toMatch(/^Read the thermometer now/);
    expect(screen.getByRole('link', { name: 'Enter what it says' }).getAttribute('href')).toBe(
      '#track-reading',
    );
  });
});
