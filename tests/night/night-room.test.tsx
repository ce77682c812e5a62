// @vitest-environment jsdom
import 'fake-indexeddb/auto';
import { cleanup, configure, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from '@/components/night/demo-night';
import { NightRoom } from '@/components/night/night-room';
import { StoreProvider } from '@/components/store/store-provider';
import { ToastProvider } from '@/components/ui/toast';
import { openStore } from '@/lib/store/open-store';
import type { Store } from '@/lib/store/store-type';
import { knowModalDialogs } from '@/tests/support/modal-dialogs';
import { chicago } from './night-case';

// What stands below the answer is drawn a little at a time; on a busy machine that takes a while.
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

function open() {
  const given = { ...store, close: () => undefined };
  render(
    <StoreProvider open={() => Promise.resolve(given)}>
      <ToastProvider>
        <NightRoom />
      </ToastProvider>
    </StoreProvider>,
  );
}

const storedEvent = async () => (await store.get('events', DEMO_EVENT_ID))?.value;

describe('the night page', () => {
  it('opens with words and no number that could be taken for a plan', () => {
    open();
    expect(screen.getByText('Opening the night...')).toBeTruthy();
    expect(screen.getByRole('main').textContent).not.toMatch(/\d/);
  });

  it('shows the demo night at first start: what is fitted, how it stands, what is next, how sure, on what', async () => {
    open();
    const fitted = await screen.findByRole('region', { name: 'Fitted' });
    expect(within(fitted).getByText('410/400/410')).toBeTruthy();
    expect(fitted.textContent).toMatch(/Now, 18:15: right\./);
    const next = screen.getByRole('region', { name: 'Next' });
    expect(next.textContent).toMatch(/Fit 420\/410\/420between Round \d and Round \d/);
    expect(screen.getByText(/^Lean in (none|\d+) of 64 forecasts/)).toBeTruthy();
    expect(screen.getByText('invented')).toBeTruthy();
  });

  it('says in the run table what the call says', async () => {
    open();
    const runs = within(await screen.findByRole('table', { name: /^Jets for every run/ }));
    const call = screen.getByRole('region', { name: 'The call' });
    const [, start, to, round] =
      /^The callStart on (\S+)\. Fit (\S+) between Round \d and (Round \d)/.exec(call.textContent ?? '') ??
      [];
    expect(runs.getByRole('row', { name: /^Round 1/ }).textContent).toContain(start);
    expect(runs.getByRole('row', { name: new RegExp(`^${round}`) }).textContent).toContain(`${to} fit `);
  });

  it('keeps what was fitted, plans from it, and takes it back', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    open();
    await user.click(await screen.findByRole('button', { name: 'I have fitted 420/410/420' }));
    const fitted = await screen.findByRole('region', { name: 'Fitted' });
    await waitFor(() => expect(within(fitted).getByText('420/410/420')).toBeTruthy());
    expect((await storedEvent())?.fitted[DEMO_MACHINE_ID]).toEqual({ mains: [420, 410, 420], trim: null });
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    await waitFor(() => expect(within(fitted).getByText('410/400/410')).toBeTruthy());
    expect((await storedEvent())?.fitted).toEqual({});
    expect((await storedEvent())?.accepted).toEqual({});
  });

  it('moves what is to come when the night is late', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    knowModalDialogs();
    open();
    await user.click(await screen.findByRole('button', { name: 'Off schedule' }));
    await user.click(screen.getByRole('button', { name: 'Move Round 1 to 19:15' }));
    await waitFor(async () =>
      expect((await storedEvent())?.event.runs[0]?.start).toBe('2027-01-16T19:15:00-06:00'),
    );
    expect((await storedEvent())?.event.runs.at(-1)?.end).toBe('2027-01-17T00:45:00-06:00');
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    await waitFor(async () =>
      expect((await storedEvent())?.event.runs[0]?.start).toBe('2027-01-16T19:00:00-06:00'),
    );
  });

  it('says what is missing where the box is empty, and comes back when it is not', async () => {
    open();
    await screen.findByRole('region', { name: 'Next' });
    const stored = await store.get('machines', DEMO_MACHINE_ID);
    if (stored === null) throw new Error('the demo machine must be there');
    const empty = { ...stored.value, machine: { ...stored.value.machine, box: [] } };
    await store.put('machines', DEMO_MACHINE_ID, empty, stored.revision);
    expect(await screen.findByText(/^The box is empty\. Add the main jets you own/)).toBeTruthy();
    const again = await store.get('machines', DEMO_MACHINE_ID);
    await store.put('machines', DEMO_MACHINE_ID, stored.value, again?.revision ?? null);
    expect(await screen.findByRole('region', { name: 'Next' })).toBeTruthy();
  });

  it('shows only the plan at the track', async () => {
    window.location.hash = '#track';
    open();
    await screen.findByRole('button', { name: 'I have fitted 420/410/420' });
    expect(screen.queryByRole('table')).toBeNull();
    expect(screen.getByText('18:15')).toBeTruthy();
  });
});

describe('the demo night left open', () => {
  it('becomes the next evening when its last run starts, without what was noted for the one before', async () => {
    vi.setSystemTime(chicago('2027-01-17', '00:10'));
    open();
    await screen.findByRole('region', { name: 'Next' });
    expect(Object.keys((await storedEvent())?.fitted ?? {})).toEqual([DEMO_MACHINE_ID]);
    vi.setSystemTime(chicago('2027-01-17', '00:16'));
    document.dispatchEvent(new Event('visibilitychange'));
    await waitFor(async () =>
      expect((await storedEvent())?.event.runs[0]?.start).toBe('2027-01-17T19:00:00-06:00'),
    );
    expect((await storedEvent())?.fitted).toEqual({});
    const fitted = await screen.findByRole('region', { name: 'Fitted' });
    await waitFor(() => expect(fitted.textContent).toMatch(/Now, 00:16/));
    expect(screen.queryByText(/No run to come/)).toBeNull();
  });
});
