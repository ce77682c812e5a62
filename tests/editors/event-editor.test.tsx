// @vitest-environment jsdom
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EventEditor } from '@/components/event/event-editor';
import type { EventJson } from '@/lib/contract/event';
import { eventSchema } from '@/lib/contract/event';
import { METRIC_UNITS } from '@/lib/units/choice';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

type User = ReturnType<typeof userEvent.setup>;

function open(initial: EventJson | null = null) {
  const saved = vi.fn();
  render(
    <EventEditor id="e" initial={initial} units={METRIC_UNITS} onSave={saved} onCancel={() => undefined} />,
  );
  return { user: userEvent.setup({ delay: null }), saved };
}

const field = (name: string): HTMLInputElement =>
  screen.getByLabelText<HTMLInputElement>(name, { selector: 'input, select, textarea', exact: true });
const save = () => screen.getByText('Save event');

async function enter(user: User, target: HTMLElement, text: string) {
  await user.clear(target);
  await user.click(target);
  await user.paste(text);
}

async function fillIn(user: User, texts: Readonly<Record<string, string>>) {
  for (const [name, text] of Object.entries(texts)) await enter(user, field(name), text);
}

const EVENING = {
  'Name of the event': 'Friday night drags',
  Elevation: '402',
  'Time zone of the track': 'America/Chicago',
  'Date of the first run': '2027-01-16',
};

const TWO_RUNS = eventSchema.parse({
  name: 'Two runs',
  timezone: 'America/Chicago',
  elevationM: 402,
  runs: [
    { name: 'Round 1', start: '2027-01-16T23:30:00-06:00', end: '2027-01-16T23:40:00-06:00' },
    { name: 'Round 2', start: '2027-01-17T00:30:00-06:00', end: '2027-01-17T00:40:00-06:00' },
  ],
});

describe('the event editor', () => {
  it('suggests the zone of the device and says what time it is at the track', async () => {
    const { user } = open();
    expect(field('Time zone of the track').value).toBe('Europe/Berlin');
    screen.getByText(/Track time is \d\d:\d\d now, the same as this device/);
    await enter(user, field('Time zone of the track'), 'America/Chicago');
    screen.getByText(/Track time is \d\d:\d\d now, \d+ h behind this device/);
    await user.click(screen.getByText('Use this device’s: Europe/Berlin'));
    expect(field('Time zone of the track').value).toBe('Europe/Berlin');
  });

  it('finds a zone by its city, with arrow keys and Enter', async () => {
    const { user } = open();
    const zone = screen.getByRole('combobox', { name: 'Time zone of the track' });
    await enter(user, zone, 'new york');
    expect(zone.getAttribute('aria-expanded')).toBe('true');
    await user.keyboard('{ArrowUp}{Enter}');
    expect(field('Time zone of the track').value).toBe('America/New_York');
    expect(zone.getAttribute('aria-expanded')).toBe('false');
  });

  it('makes a series of runs and shows what it understood', async () => {
    const { user, saved } = open();
    await fillIn(user, { ...EVENING, 'First at': '7 pm', Every: '25', 'How many': '3', 'Each lasting': '6' });
    screen.getByText('3 runs, starting at 19:00, 19:25, 19:50. The last ends at 19:56.');
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].event.runs[2]).toMatchObject({
      name: 'Round 3',
      start: '2027-01-16T19:50:00-06:00',
      end: '2027-01-16T19:56:00-06:00',
    });
    expect(saved.mock.calls[0]?.[0].from).toEqual([null, null, null]);
  });

  it('turns a series into a list, adds a run after the last and takes one away', async () => {
    const { user, saved } = open();
    await fillIn(user, {
      ...EVENING,
      'First at': '19:00',
      Every: '25',
      'How many': '2',
      'Each lasting': '6',
    });
    await user.click(screen.getByLabelText('One by one'));
    await user.click(screen.getByText('Add a run'));
    const third = within(screen.getByRole('group', { name: 'Run 3' }));
    expect(third.getByLabelText<HTMLInputElement>('Start').value).toBe('19:50');
    expect(third.getByLabelText<HTMLInputElement>('End or minutes').value).toBe('6 min');
    expect(third.getByLabelText<HTMLInputElement>('Name').value).toBe('Round 3');
    await user.click(screen.getByRole('button', { name: 'Remove run 1' }));
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].event.runs.map((run: { name: string }) => run.name)).toEqual([
      'Round 2',
      'Round 3',
    ]);
  });

  it('brings a removed run back with Undo', async () => {
    const { user } = open(TWO_RUNS);
    await user.click(screen.getByRole('button', { name: 'Remove run 1' }));
    expect(screen.queryByRole('group', { name: 'Run 2' })).toBeNull();
    await user.click(screen.getByText('Undo'));
    screen.getByRole('group', { name: 'Run 2' });
  });

  it('shows the day of a run after midnight and keeps track of which run is which', async () => {
    const { user, saved } = open(TWO_RUNS);
    const second = within(screen.getByRole('group', { name: 'Run 2' }));
    expect(second.getByRole<HTMLOptionElement>('option', { selected: true }).textContent).toBe(
      'Sun 17 Jan (by order)',
    );
    await user.click(screen.getByRole('button', { name: 'Remove run 1' }));
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].from).toEqual([1]);
    // It had its day from the run before; without that run it must not slip to the night before.
    expect(saved.mock.calls[0]?.[0].event.runs[0].start).toBe('2027-01-17T00:30:00-06:00');
  });

  it('warns about runs that overlap, and saves them all the same', async () => {
    const { user, saved } = open(TWO_RUNS);
    const first = within(screen.getByRole('group', { name: 'Run 1' }));
    await enter(user, first.getByLabelText('End or minutes'), '90');
    screen.getByText(/Round 2 starts at 00:30, before Round 1 ends at 01:00/);
    await user.click(save());
    expect(saved).toHaveBeenCalledTimes(1);
  });

  it('leads to the run whose time cannot be read', async () => {
    const { user, saved } = open(TWO_RUNS);
    const second = within(screen.getByRole('group', { name: 'Run 2' }));
    await enter(user, second.getByLabelText('Start'), 'midnight');
    await user.click(save());
    expect(saved).not.toHaveBeenCalled();
    expect(screen.getByRole('alert').textContent).toContain('Run 2, start: "midnight" is not a time.');
    expect(document.activeElement).toBe(second.getByLabelText('Start'));
  });

  it('takes both coordinates from one paste', async () => {
    const { user, saved } = open(TWO_RUNS);
    await enter(user, field('Latitude'), '47.42, -93.61');
    expect(field('Longitude').value).toBe('-93.61');
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].event.place).toEqual({ name: '', latitude: 47.42, longitude: -93.61 });
  });

  it('asks for no swap minutes on a ride', async () => {
    const { user, saved } = open(TWO_RUNS);
    await user.click(screen.getByRole('checkbox', { name: /A ride/ }));
    expect(screen.queryByLabelText('A jet swap takes')).toBeNull();
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].event.ride).toBe(true);
  });
});
