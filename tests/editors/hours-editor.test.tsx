// @vitest-environment jsdom
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { HoursEditor } from '@/components/hours/hours-editor';
import type { TypedHours } from '@/lib/store/records';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

type User = ReturnType<typeof userEvent.setup>;

const EVENT = {
  timezone: 'America/Chicago',
  elevationM: 402,
  runs: [
    { name: 'Round 1', start: '2027-01-16T19:00:00-06:00', end: '2027-01-16T19:06:00-06:00', weight: 1 },
    { name: 'Round 2', start: '2027-01-16T22:10:00-06:00', end: '2027-01-16T22:16:00-06:00', weight: 1 },
  ],
};

function open(initial: TypedHours | null = null, units = METRIC_UNITS) {
  const saved = vi.fn();
  const view = render(
    <HoursEditor
      id="h"
      initial={initial}
      event={EVENT}
      units={units}
      onSave={saved}
      onCancel={() => undefined}
    />,
  );
  return { user: userEvent.setup({ delay: null }), saved, view };
}

const field = (name: string): HTMLInputElement =>
  screen.getByLabelText<HTMLInputElement>(name, { selector: 'input, textarea', exact: true });
const save = () => screen.getByText('Save hours');
const savedHours = (saved: ReturnType<typeof vi.fn>): TypedHours['hours'] =>
  saved.mock.calls[0]?.[0].typed.hours;

async function enter(user: User, name: string, text: string) {
  await user.clear(field(name));
  await user.click(field(name));
  await user.paste(text);
}

async function openPaste(user: User, text: string) {
  await user.click(screen.getByText('Paste hours from a spreadsheet'));
  await enter(user, 'Pasted hours', text);
}

describe('the hours editor', () => {
  it('fills in between two typed temperatures, visibly, and saves only what was typed', async () => {
    const { user, saved } = open();
    await enter(user, '18:00', '-4');
    await enter(user, '23:00', '-14');
    expect(field('21:00').placeholder).toBe('−10.0\u00a0°C');
    expect(field('21:00').value).toBe('');
    expect(screen.getAllByText('in between')).toHaveLength(4);
    expect(screen.getAllByText('°C typed')).toHaveLength(2);
    await user.click(save());
    expect(savedHours(saved)).toEqual([
      { time: '2027-01-16T18:00:00-06:00', temperatureC: -4 },
      { time: '2027-01-16T23:00:00-06:00', temperatureC: -14 },
    ]);
    expect(saved.mock.calls[0]?.[0].elevationM).toBe(402);
  });

  it('has a sign key for every hour and goes to the next hour with Enter', async () => {
    const { user } = open();
    await user.type(field('18:00'), '12{Enter}');
    expect(document.activeElement).toBe(field('19:00'));
    await user.click(screen.getByRole('button', { name: 'Change sign at 18:00' }));
    expect(field('18:00').value).toBe('-12');
  });

  it('says which runs the typed hours do not reach', async () => {
    const { user } = open();
    await enter(user, '18:00', '-4');
    await enter(user, '21:00', '-14');
    screen.getByText(/No temperature yet for Round 2/);
    await enter(user, '23:00', '-14');
    expect(screen.queryByText(/No temperature yet/)).toBeNull();
  });

  it('adds hours at both ends and a time between the hours', async () => {
    const { user } = open();
    await user.click(screen.getByText('Hour before'));
    await user.click(screen.getByText('Hour after'));
    await user.click(screen.getByText('Hour after'));
    for (const clock of ['17:00', '00:00', '01:00']) field(clock);
    screen.getByText('Sun 17 Jan 2027');
    await user.type(field('A time between the hours'), '7:40 pm{Enter}');
    field('19:40');
    await user.type(field('A time between the hours'), 'late{Enter}');
    screen.getByText('Type a time, such as 19:40.');
  });

  it('takes a column of 24 hours pasted into the first hour in one act, and gives it back', async () => {
    const { user, saved } = open();
    const column = Array.from({ length: 24 }, (_, i) => `-${i},5`).join('\n');
    await user.click(field('18:00'));
    await user.paste(column);
    screen.getByText('24 hours pasted. Undo brings back what stood before.');
    expect(field('19:00').value).toBe('-1.5');
    await user.click(save());
    expect(savedHours(saved)).toHaveLength(24);
    expect(savedHours(saved)[23]).toEqual({ time: '2027-01-17T17:00:00-06:00', temperatureC: -23.5 });
    await user.click(screen.getByText('Undo'));
    expect(field('19:00').value).toBe('');
  });

  it('shows what it understood of a table, what it left out and why, before anything is taken over', async () => {
    const { user, saved } = open();
    await openPaste(user, 'Time;Temp °F;RH\n18:00;20;70\n19:00;n/a;71\n20:00;15,8;72\nlate;1;1');
    screen.getByText(/2 hours from 2027-01-16 18:00 to 2027-01-16 20:00/);
    screen.getByText(/temperatures in °F and humidities in percent/);
    screen.getByText(/Line 3 .* has no temperature/);
    screen.getByText(/Line 5 .* has a time that cannot be read/);
    expect(field('18:00').value).toBe('');
    await user.click(screen.getByText('Use these 2 hours'));
    expect(Number(field('20:00').value)).toBeCloseTo(-9, 9);
    expect(field('Humidity at 20:00').value).toBe('72');
    expect(field('Pasted hours').value).toBe('');
    await user.click(save());
    expect(savedHours(saved)[1]).toMatchObject({ temperatureC: -9, relativeHumidity: 0.72 });
  });

  it('lets the first hour of a bare column be told', async () => {
    const { user } = open();
    await openPaste(user, '-1\n-2\n-3');
    expect(field('First line is the hour').value).toBe('18:00');
    await enter(user, 'First line is the hour', '9 pm');
    await user.click(screen.getByText('Use these 3 hours'));
    expect(field('21:00').value).toBe('-1');
    expect(field('23:00').value).toBe('-3');
  });

  it('asks what a doubtful paste means instead of guessing', async () => {
    const { user } = open();
    await openPaste(user, '18:00,-12,5\n19:00,-13,0');
    await user.click(screen.getByLabelText('Decimal comma'));
    await user.click(screen.getByText('Use these 2 hours'));
    expect(field('18:00').value).toBe('-12.5');
  });

  it('asks which column counts', async () => {
    const { user } = open();
    await openPaste(user, '18:00\t-9\t-12\n19:00\t-10\t-13');
    await user.selectOptions(screen.getByLabelText('Column 2, such as -9'), 'Leave out');
    await user.selectOptions(screen.getByLabelText('Column 3, such as -12'), 'Temperature');
    await user.click(screen.getByText('Read it so'));
    await user.click(screen.getByText('Use these 2 hours'));
    expect(field('19:00').value).toBe('-13');
  });

  it('takes pasted pressures only with their kind', async () => {
    const { user, saved } = open();
    await openPaste(user, 'time;temp;pressure\n18:00;-4;1012\n23:00;-9;1014');
    const kinds = within(screen.getByRole('group', { name: 'Which pressure is in the table?' }));
    await user.click(kinds.getByLabelText('Sea level'));
    await user.click(screen.getByText('Use these 2 hours'));
    await user.click(save());
    expect(savedHours(saved)[0]).toMatchObject({ seaLevelHpa: 1012 });
  });

  it('explains the sea-level trap once, beside the pressure', async () => {
    const { user, saved } = open();
    await enter(user, '18:00', '10');
    await enter(user, '23:00', '5');
    await enter(user, 'Elevation of the track', '1600');
    await user.click(screen.getByLabelText('Station'));
    await enter(user, 'Station pressure', '1015');
    await user.click(save());
    expect(saved).not.toHaveBeenCalled();
    expect(screen.getByRole('alert').textContent).toContain('One thing to put right.');
    expect(document.activeElement).toBe(field('Station pressure'));
    await user.click(screen.getByLabelText('Sea level'));
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].typed.pressure).toEqual({ kind: 'sea-level', hpa: 1015 });
  });

  it('names the hour that cannot be read, and keeps what was typed there', async () => {
    const { user } = open(null, US_UNITS);
    await enter(user, '18:00', '20');
    await enter(user, '19:00', 'cold');
    await enter(user, '23:00', '-5F');
    await user.click(save());
    expect(screen.getByRole('alert').textContent).toContain('19:00, temperature: "cold" is not a number.');
    expect(document.activeElement).toBe(field('19:00'));
    expect(field('19:00').value).toBe('cold');
  });

  it('brings unsaved hours back after a reload', async () => {
    const first = open();
    await enter(first.user, '18:00', '-4');
    first.view.unmount();
    open();
    expect(field('18:00').value).toBe('-4');
  });
});
