// @vitest-environment jsdom
import 'fake-indexeddb/auto';
import { cleanup, configure, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { NightRoom } from '@/components/night/night-room';
import { StoreProvider } from '@/components/store/store-provider';
import { DEFAULT_PREFERENCES } from '@/components/store/use-preferences';
import { ToastProvider } from '@/components/ui/toast';
import { openStore } from '@/lib/store/open-store';
import { PREFERENCES_ID } from '@/lib/store/preferences-id';
import type { Store } from '@/lib/store/store-type';
import { chicago } from './night-case';

configure({ asyncUtilTimeout: 5000 });

let store: Store;

beforeEach(async () => {
  vi.useFakeTimers({ now: chicago('2027-01-16', '18:15'), toFake: ['Date'] });
  window.location.hash = '';
  vi.stubGlobal('indexedDB', new IDBFactory());
  store = await openStore();
});

afterEach(() => {
  cleanup();
  store.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function open(clock: '12' | '24') {
  await store.put('preferences', PREFERENCES_ID, { ...DEFAULT_PREFERENCES, clock }, null);
  const given = { ...store, close: () => undefined };
  render(
    <StoreProvider open={() => Promise.resolve(given)}>
      <ToastProvider>
        <NightRoom />
      </ToastProvider>
    </StoreProvider>,
  );
  await screen.findByRole('region', { name: 'Next' });
}

const shown = () => document.body.textContent ?? '';
/** Clock times without am or pm behind them. */
const bare = () => shown().match(/\d{1,2}:\d{2}(?!\u00a0[ap]m|\d)/g) ?? [];

describe('the night page on the 12-hour clock', () => {
  it('writes every time of the whole page so', async () => {
    await open('12');
    await waitFor(() => expect(screen.getAllByRole('table').length).toBeGreaterThan(2));
    expect(shown()).toMatch(/Now, 6:15\u00a0pm/);
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
