// @vitest-environment jsdom

import { cleanup, configure, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { NightRoom } from '@/components/night/night-room';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from '@/lib/night/living-demo';
import { knowModalDialogs } from '@/tests/support/modal-dialogs';
import { roomOnStore } from '@/tests/support/room-on-store';
import { textOf } from '@/tests/support/text-of';
import { chicago } from './night-case';

// What stands below the answer is drawn a little at a time; on a busy machine that takes a while.
configure({ asyncUtilTimeout: 5000 });

beforeEach(() => {
  vi.useFakeTimers({ now: chicago('2027-01-16', '18:15'), toFake: ['Date'] });
  window.location.hash = '';
});

// After the clock is set: the database opens by it.
const room = roomOnStore();

function open() {
  room.show(<NightRoom />);
}

const storedEvent = async () => (await room.store.get('events', DEMO_EVENT_ID))?.value;

describe('the night page', () => {
  it('opens with words and no number that could be taken for a plan', () => {
    open();
    screen.getByText('Opening the night…');
    expect(textOf(screen.getByRole('main'))).not.toMatch(/\d/);
  });

  it('shows the demo night at first start: what is fitted, how it stands, what is next, how sure, on what', async () => {
    open();
    const fitted = await screen.findByRole('region', { name: 'In now' });
    expect(textOf(fitted)).toContain('410 400 410');
    expect(textOf(fitted)).toMatch(/GOOD.*baseline/);
    expect(textOf(screen.getByRole('main'))).toContain('18:15');
    const next = screen.getByRole('region', { name: 'Next' });
    expect(textOf(next)).toMatch(
      /\d\d:\d\d in .*Put in 420 410 420.*After Round \d\. Start by \d\d:\d\d\. 410 400 410 goes lean by Round \d\./,
    );
    screen.getByText(/^Risk of lean: (under 1|\d+) in 64/);
    screen.getByText('invented');
  });

  it('says in the run table what the call says', async () => {
    open();
    const runs = within(await screen.findByRole('table', { name: /^Jets for every run/ }));
    const call = screen.getByRole('region', { name: 'The call' });
    const [, start, to, round] =
      /^The callStart on ([\d ]+)\. Put in ([\d ]+) between Round \d and (Round \d)/.exec(textOf(call)) ?? [];
    expect(textOf(runs.getByRole('row', { name: /^Round 1/ }))).toContain(start);
    expect(textOf(runs.getByRole('row', { name: new RegExp(`^${round}`) }))).toContain(to);
    expect(
      textOf(runs.getByRole('row', { name: new RegExp(`Put in ${to}`.replaceAll(' ', '\\s')) })),
    ).toMatch(/\d\d:\d\d to \d\d:\d\d/);
  });

  it('keeps what was fitted, plans from it, and takes it back', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    vi.setSystemTime(chicago('2027-01-16', '19:40'));
    open();
    const done = await screen.findByRole('button', { name: 'Done: 420 410 420 is in' });
    const before = await storedEvent();
    await user.click(done);
    const fitted = await screen.findByRole('region', { name: 'In now' });
    await waitFor(() => expect(textOf(fitted)).toContain('420 410 420'));
    expect((await storedEvent())?.fitted[DEMO_MACHINE_ID]).toEqual({ mains: [420, 410, 420], trim: null });
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    await waitFor(() => expect(textOf(fitted)).toContain('410 400 410'));
    expect((await storedEvent())?.fitted).toEqual(before?.fitted);
    expect((await storedEvent())?.accepted).toEqual({});
  });

  it('holds the place of a button that was pressed, so that a second tap says nothing more', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    vi.setSystemTime(chicago('2027-01-16', '19:50'));
    open();
    const done = await screen.findByRole('button', { name: 'Done: 420 410 420 is in' });
    await user.click(done);
    await waitFor(async () =>
      expect((await storedEvent())?.fitted[DEMO_MACHINE_ID]?.mains).toEqual([420, 410, 420]),
    );
    expect(screen.getByRole('button', { name: 'Done: 420 410 420 is in' })).toBe(done);
    await user.click(done);
    expect((await storedEvent())?.fitted[DEMO_MACHINE_ID]?.mains).toEqual([420, 410, 420]);
    expect(screen.queryByRole('button', { name: /^Done: 43/ })).toBeNull();
  });

  it('asks whether an accepted swap was made once its time is over, and takes every answer', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    open();
    await screen.findByRole('region', { name: 'Next' });
    await user.click(await screen.findByRole('button', { name: 'This is my plan' }));
    await waitFor(async () => expect((await storedEvent())?.accepted[DEMO_MACHINE_ID]).toBeDefined());
    cleanup();
    vi.setSystemTime(chicago('2027-01-16', '21:51'));
    open();
    const asked = await screen.findByRole('region', { name: 'Not told' });
    expect(textOf(asked)).toMatch(/^Is 420 410 420 in\?/);
    const fitted = screen.getByRole('region', { name: 'In now' });
    expect(textOf(fitted)).toContain('410 400 410');
    const table = await screen.findByRole('table', { name: /^Jets for every run/ });
    expect(textOf(table)).toContain('past, jets not told');
    await user.click(within(asked).getByRole('button', { name: 'No, still 410 400 410' }));
    await waitFor(() => expect(screen.queryByRole('region', { name: 'Not told' })).toBeNull());
    expect((await storedEvent())?.made).toEqual({});
    expect((await storedEvent())?.fitted[DEMO_MACHINE_ID]?.mains).toEqual([410, 400, 410]);
  });

  const startOf = async (run: number) => (await storedEvent())?.event.runs.at(run)?.start;

  it('moves what is to come in two taps, also to start now, and takes it back in one', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    knowModalDialogs();
    open();
    await user.click(await screen.findByRole('button', { name: 'Running late?' }));
    await user.click(screen.getByRole('button', { name: 'All 50 min later: Round 1 at 19:50' }));
    await waitFor(async () => expect(await startOf(0)).toBe('2027-01-16T19:50:00-06:00'));
    expect(await startOf(-1)).toBe('2027-01-17T01:05:00-06:00');
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    await waitFor(async () => expect(await startOf(0)).toBe('2027-01-16T19:00:00-06:00'));
    await user.click(screen.getByRole('button', { name: 'Running late?' }));
    await user.click(screen.getByRole('button', { name: 'Round 1 starts now' }));
    await waitFor(async () => expect(await startOf(0)).toBe('2027-01-16T18:15:00-06:00'));
    expect(await startOf(1)).toBe('2027-01-16T19:00:00-06:00');
  });

  it('says before a delay that would leave the hours which runs it would leave without a call', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    knowModalDialogs();
    open();
    await screen.findByRole('region', { name: 'Next' });
    const stored = await room.store.get('events', DEMO_EVENT_ID);
    if (stored === null || stored.value.typed === null) throw new Error('the demo has typed hours');
    const hours = stored.value.typed.hours.filter(({ time }) => time <= '2027-01-17T01:00:00-06:00');
    const shorter = { ...stored.value, typed: { ...stored.value.typed, hours } };
    await room.store.put('events', DEMO_EVENT_ID, shorter, stored.revision);
    await user.click(await screen.findByRole('button', { name: 'Running late?' }));
    await screen.findByText(/^50 minutes later, Round 8 would be past the end of the hours/);
    expect(screen.queryByText(/^20 minutes later/)).toBeNull();
  });

  it('adds a run in two taps, and takes it back', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    knowModalDialogs();
    open();
    await user.click(await screen.findByRole('button', { name: 'Running late?' }));
    await user.click(screen.getByRole('button', { name: 'One more run after Round 8' }));
    await waitFor(async () => expect((await storedEvent())?.event.runs.length).toBe(9));
    expect((await storedEvent())?.event.runs.at(-1)).toMatchObject({
      name: 'Round 9',
      start: '2027-01-17T01:00:00-06:00',
    });
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    await waitFor(async () => expect((await storedEvent())?.event.runs.length).toBe(8));
  });

  it('knows a racer who is knocked out in one tap, and who is back in one', async () => {
    const user = userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
    open();
    await user.click(await screen.findByRole('button', { name: 'Knocked out' }));
    const next = await screen.findByRole('region', { name: 'Next' });
    await waitFor(() => expect(textOf(next)).toMatch(/^NextOut/));
    screen.getByText(/^No run to come\.$/);
    await user.click(within(next).getByRole('button', { name: 'Back in' }));
    await waitFor(() => expect(textOf(next)).toContain('Put in 420 410 420'));
  });

  it('says what is missing where the box is empty, and comes back when it is not', async () => {
    open();
    await screen.findByRole('region', { name: 'Next' });
    const stored = await room.store.get('machines', DEMO_MACHINE_ID);
    if (stored === null) throw new Error('the demo machine must be there');
    const empty = { ...stored.value, machine: { ...stored.value.machine, box: [] } };
    await room.store.put('machines', DEMO_MACHINE_ID, empty, stored.revision);
    await screen.findByText(/^The box is empty\. Add the main jets you own/);
    const again = await room.store.get('machines', DEMO_MACHINE_ID);
    await room.store.put('machines', DEMO_MACHINE_ID, stored.value, again?.revision ?? null);
    await screen.findByRole('region', { name: 'Next' });
  });

  it('shows only the plan at the track', async () => {
    window.location.hash = '#track';
    vi.setSystemTime(chicago('2027-01-16', '19:40'));
    open();
    await screen.findByRole('button', { name: 'Done: 420 410 420 is in' });
    expect(screen.queryByRole('table')).toBeNull();
    screen.getByText('19:40');
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
    const fitted = await screen.findByRole('region', { name: 'In now' });
    await waitFor(() => expect(textOf(screen.getByRole('main'))).toContain('00:16'));
    expect(textOf(fitted)).toMatch(/GOOD|LEAN|RICH/);
    expect(screen.queryByText(/No run to come/)).toBeNull();
  });
});
