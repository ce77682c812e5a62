// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { BaselineForm } from '@/components/baseline/baseline-form';
import { HoursEditor } from '@/components/hours/hours-editor';
import { MachineEditor } from '@/components/machine/machine-editor';
import type { MachineJson } from '@/lib/contract/machine';
import type { TypedHours } from '@/lib/store/records';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { twin } from '../contract/sent';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

type User = ReturnType<typeof userEvent.setup>;

const person = () => userEvent.setup({ delay: null });
const field = (name: string): HTMLInputElement =>
  screen.getByLabelText<HTMLInputElement>(name, { selector: 'input' });
const button = (name: string) => screen.getByRole('button', { name });
const question = () => screen.queryByText(/Is it a sea-level number|Is it station pressure/);

async function enter(user: User, name: string, text: string) {
  await user.clear(field(name));
  await user.click(field(name));
  await user.paste(text);
}

const machineOf = (air: MachineJson['baseline']['air']): MachineJson =>
  twin({ baseline: { air, judged: 'right' } });

function openMachine(air: MachineJson['baseline']['air'], units = METRIC_UNITS) {
  const saved = vi.fn<(machine: MachineJson) => undefined>();
  render(<MachineEditor id="m" initial={machineOf(air)} units={units} onSave={saved} onCancel={() => {}} />);
  const airSaved = () => saved.mock.calls.at(-1)?.[0].baseline.air;
  return { user: person(), saved, airSaved };
}

const PLAIN = { temperatureC: -10, elevationM: 300, pressureHpa: 982 };

describe('the machine editor', () => {
  it('asks about 1022 hPa as station pressure at 300 m, and one press makes it a sea-level number', async () => {
    const { user, airSaved } = openMachine(PLAIN);
    expect(question()).toBeNull();
    await enter(user, 'Station pressure', '1022');
    expect(question()?.textContent).toMatch(/1022.hPa as station pressure at 300.m/);
    await user.click(button('It is a sea-level number'));
    expect(question()).toBeNull();
    expect(field('Sea-level pressure').value).toBe('1022');
    await user.click(button('Save machine'));
    expect(airSaved()).toMatchObject({ seaLevelHpa: 1022, elevationM: 300 });
    expect(airSaved()).not.toHaveProperty('pressureHpa');
  });

  it('asks about 30.05 inHg at 900 and at 1,320 ft', async () => {
    const { user } = openMachine(PLAIN, US_UNITS);
    await enter(user, 'Station pressure', '30.05');
    for (const feet of ['900', '1320']) {
      await enter(user, 'Elevation', feet);
      expect(question()).not.toBeNull();
    }
    await enter(user, 'Elevation', '30');
    expect(question()).toBeNull();
  });

  it('takes the word of a person once, and asks again about another number only', async () => {
    const { user, airSaved } = openMachine(PLAIN);
    await enter(user, 'Station pressure', '1022');
    await user.click(button('It is station pressure'));
    expect(question()).toBeNull();
    await user.click(button('Save machine'));
    expect(airSaved()).toMatchObject({ pressureHpa: 1022, pressureConfirmed: true });
    await enter(user, 'Station pressure', '1023');
    expect(question()).not.toBeNull();
    await user.click(button('Undo'));
    expect(question()).toBeNull();
  });

  it('does not ask about what was confirmed when it was saved', () => {
    openMachine({ ...PLAIN, pressureHpa: 1022, pressureConfirmed: true });
    expect(question()).toBeNull();
  });

  it('keeps nobody from saving unanswered', async () => {
    const { user, airSaved } = openMachine({ ...PLAIN, pressureHpa: 1022 });
    expect(question()).not.toBeNull();
    await enter(user, 'Name', 'Other');
    await user.click(button('Save machine'));
    expect(airSaved()).toMatchObject({ pressureHpa: 1022 });
    expect(airSaved()).not.toHaveProperty('pressureConfirmed');
  });

  it('asks about a station number called a sea-level one', async () => {
    const { user, airSaved } = openMachine({ temperatureC: -10, elevationM: 402, seaLevelHpa: 968 });
    expect(question()?.textContent).toMatch(/as low as in a heavy storm/);
    await user.click(button('It is station pressure'));
    await user.click(button('Save machine'));
    expect(airSaved()).toMatchObject({ pressureHpa: 968, elevationM: 402 });
  });

  it('refuses what lies beyond records', async () => {
    const { user, saved } = openMachine(PLAIN);
    await enter(user, 'Station pressure', '1060');
    await user.click(button('Save machine'));
    expect(saved).not.toHaveBeenCalled();
    expect(screen.getByRole('alert').textContent).toContain('looks like a sea-level number');
  });
});

describe('the form of a new baseline', () => {
  it('asks in the same way', async () => {
    const saved = vi.fn();
    render(
      <BaselineForm
        machineId="m"
        machine={machineOf(PLAIN)}
        log={[]}
        units={METRIC_UNITS}
        today="2027-01-16"
        onSave={saved}
        onCancel={() => {}}
      />,
    );
    const user = person();
    await enter(user, 'Temperature', '-10');
    await enter(user, 'Elevation', '300');
    await user.click(screen.getByRole('radio', { name: 'Station' }));
    await enter(user, 'Station pressure', '1022');
    await user.click(button('It is a sea-level number'));
    await user.click(button('Save baseline'));
    expect(saved.mock.calls[0]?.[0].baseline.air).toMatchObject({
      seaLevelHpa: 1022,
      pressureConfirmed: true,
    });
  });
});

describe('the hours editor', () => {
  const EVENT = {
    timezone: 'America/Chicago',
    elevationM: 402,
    runs: [
      { name: 'Round 1', start: '2027-01-16T19:00:00-06:00', end: '2027-01-16T19:06:00-06:00', weight: 1 },
    ],
  };
  const TYPED: TypedHours = {
    hours: [
      { time: '2027-01-16T18:00:00-06:00', temperatureC: -4 },
      { time: '2027-01-16T20:00:00-06:00', temperatureC: -9, pressureHpa: 1016 },
    ],
    pressure: { kind: 'station', hpa: 1017 },
    relativeHumidity: 0.8,
  };

  function open(initial = TYPED) {
    const saved = vi.fn<(reading: { readonly typed: TypedHours }) => undefined>();
    render(
      <HoursEditor
        id="h"
        initial={initial}
        event={EVENT}
        units={METRIC_UNITS}
        onSave={saved}
        onCancel={() => {}}
      />,
    );
    return { user: person(), typed: () => saved.mock.calls.at(-1)?.[0].typed };
  }

  it('asks once for all hours, and one press turns them all', async () => {
    const { user, typed } = open();
    expect(question()).not.toBeNull();
    await user.click(button('It is a sea-level number'));
    expect(question()).toBeNull();
    await user.click(button('Save hours'));
    expect(typed()).toMatchObject({ pressure: { kind: 'sea-level', hpa: 1017 }, pressureConfirmed: true });
    expect(typed()?.hours[1]).toMatchObject({ seaLevelHpa: 1016 });
  });

  it('remembers that they stand as typed', async () => {
    const { user, typed } = open();
    await user.click(button('It is station pressure'));
    await user.click(button('Save hours'));
    const kept = typed();
    expect(kept).toEqual({ ...TYPED, pressureConfirmed: true });
    cleanup();
    localStorage.clear();
    open(kept);
    expect(question()).toBeNull();
  });
});
