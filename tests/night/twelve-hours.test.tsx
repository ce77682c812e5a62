// @vitest-environment jsdom
import { configure, screen, waitFor } from '@testing-library/react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { NightRoom } from '@/components/night/night-room';
import { DEFAULT_PREFERENCES } from '@/lib/store/default-preferences';
import { PREFERENCES_ID } from '@/lib/store/preferences-id';
import { roomOnStore } from '@/tests/support/room-on-store';
import { chicago } from './night-case';

configure({ asyncUtilTimeout: 5000 });

beforeEach(() => {
  vi.useFakeTimers({ now: chicago('2027-01-16', '18:15'), toFake: ['Date'] });
  window.location.hash = '';
});

// After the clock is set: the database opens by it.
const room = roomOnStore();

async function open(clock: '12' | '24') {
  await room.store.put('preferences', PREFERENCES_ID, { ...DEFAULT_PREFERENCES, clock }, null);
  room.show(<NightRoom />);
  await screen.findByRole('region', { name: 'Next' });
}

const shown = () => document.body.textContent ?? '';
/** Clock times without am or pm behind them. */
const bare = () => shown().match(/\d{1,2}:\d{2}(?!\u00a0[ap]m|\d)/g) ?? [];

describe('the night page on the 12-hour clock', () => {
  it('writes every time of the whole page so', async () => {
    window.location.hash = '#numbers';
    await open('12');
    await waitFor(() => expect(screen.getAllByRole('table').length).toBeGreaterThan(2));
    expect(shown()).toMatch(/6:15\u00a0pm/);
    expect(bare()).toEqual([]);
  });

  it('does so at the track', async () => {
    window.location.hash = '#track';
    await open('12');
    screen.getByText('6:15 pm');
    expect(bare()).toEqual([]);
  });

  it('writes none so on the 24-hour clock', async () => {
    await open('24');
    expect(bare().length).toBeGreaterThan(3);
    expect(shown()).not.toMatch(/\d\u00a0[ap]m/);
  });
});
