// @vitest-environment jsdom
import { cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Save } from '@/components/draft/use-form';
import { MachineEditor } from '@/components/machine/machine-editor';
import { SWAP_WORTH } from '@/components/machine/swap-worth-hash';
import type { MachineJson } from '@/lib/contract/machine';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { FULL_MACHINE } from './machines';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

function open({
  initial = null,
  units = US_UNITS,
  onSave = () => undefined,
}: {
  initial?: MachineJson | null;
  units?: typeof US_UNITS;
  onSave?: Save<MachineJson>;
} = {}) {
  const saved = vi.fn(onSave);
  const cancelled = vi.fn();
  const view = render(
    <MachineEditor id="m" initial={initial} units={units} onSave={saved} onCancel={cancelled} />,
  );
  return { user: userEvent.setup({ delay: null }), saved, cancelled, view };
}

const field = (name: string): HTMLElement => screen.getByLabelText(name, { selector: 'input, textarea' });
const save = () => screen.getByText('Save machine');
const choose = (group: string, option: string) =>
  within(screen.getByRole('group', { name: group })).getByRole('radio', { name: option });

/** A whole text at once, for speed; that keys arrive one by one is tested where it matters. */
async function enter(user: ReturnType<typeof userEvent.setup>, name: string, text: string) {
  await user.click(field(name));
  await user.paste(text);
}

async function typeTheFour(user: ReturnType<typeof userEvent.setup>) {
  await enter(user, 'Name', 'Blue 600');
  await enter(user, 'Main jet', '410');
  await enter(user, 'Jets in the box', '400x3 410x3 420');
  await enter(user, 'Temperature', '14');
  await enter(user, 'Elevation', '1150');
}

describe('what a swap is worth', () => {
  afterEach(() => {
    window.location.hash = '';
  });

  it('stays out of a machine where nobody says so, and its default is told', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    const hint = screen.getByText(/Power a swap must save/).textContent?.replaceAll('\u00a0', ' ');
    expect(hint).toContain('Empty: 1 % power, half a percent for each carburettor to open');
    screen.getByText(/a swap is worth 1 %/);
    await user.click(save());
    expect(saved.mock.calls[0]?.[0]).not.toHaveProperty('swapWorthPercent');
  });

  it('is typed in percent and told in horsepower and seconds', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    await enter(user, 'Rated power', '200');
    await enter(user, 'What a swap is worth', '1.5');
    const hint = screen.getByText(/Power a swap must save/).textContent?.replaceAll('\u00a0', ' ');
    // 10 s × (0.985^(−1/3) − 1) = 0.0505 s, by hand.
    expect(hint).toContain('1.5 % power (3 hp) is 0.05 s of a run of 10 s.');
    await user.click(save());
    expect(saved.mock.calls[0]?.[0]).toMatchObject({ swapWorthPercent: 1.5, ratedPowerHp: 200 });
  });

  it('beyond 20 % is asked for again, with nothing lost', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    await enter(user, 'What a swap is worth', '150');
    await user.click(save());
    expect(saved).not.toHaveBeenCalled();
    expect(field('What a swap is worth')).toHaveProperty('value', '150');
    expect(field('What a swap is worth').getAttribute('aria-invalid')).toBe('true');
  });

  it('is what the form opens at where the address asks for it', () => {
    window.location.hash = SWAP_WORTH;
    open({ initial: FULL_MACHINE });
    expect(document.activeElement).toBe(field('What a swap is worth'));
    expect(field('What a swap is worth')).toHaveProperty('value', '1.2');
    expect(screen.getByText('Advanced').closest('details')?.open).toBe(true);
  });
});

describe('the machine editor', () => {
  it('needs only name, mains, box and baseline air', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    screen.getByText('3 sizes, 7 jets: 400 × 3, 410 × 3, 420');
    screen.getByText(/That is a station pressure of about/);
    await user.click(save());
    expect(saved).toHaveBeenCalledTimes(1);
    expect(saved.mock.calls[0]?.[0]).toMatchObject({
      name: 'Blue 600',
      carburettors: [{ main: 410 }, { main: 410 }],
      baseline: { air: { temperatureC: -10, elevationM: 350.52 }, judged: 'right' },
    });
  });

  it('lists what is missing, leads to each field and puts the cursor in the first', async () => {
    const { user, saved } = open();
    await enter(user, 'Name', 'Blue 600');
    await user.click(save());
    expect(saved).not.toHaveBeenCalled();
    const alert = screen.getByRole('alert');
    expect(alert.textContent).toContain('4 things to put right.');
    expect(document.activeElement).toBe(field('Main jet'));
    await user.click(within(alert).getByRole('button', { name: 'Elevation' }));
    expect(document.activeElement).toBe(field('Elevation'));
    expect(field('Elevation').getAttribute('aria-invalid')).toBe('true');
    await enter(user, 'Elevation', '1150');
    expect(screen.getByRole('alert').textContent).toContain('3 things to put right.');
  });

  it('says what is wrong with a field once it is left, not before', async () => {
    const { user } = open();
    await user.type(field('Main jet'), '41O');
    expect(field('Main jet').getAttribute('aria-invalid')).toBeNull();
    await user.tab();
    expect(field('Main jet').getAttribute('aria-invalid')).toBe('true');
    expect((field('Main jet') as HTMLInputElement).value).toBe('41O');
  });

  it('makes a temperature negative with the sign key', async () => {
    const { user } = open();
    await user.type(field('Temperature'), '12');
    await user.click(screen.getByRole('button', { name: 'Change sign of Temperature' }));
    expect((field('Temperature') as HTMLInputElement).value).toBe('-12');
  });

  it('takes staggered mains, starting from the one that was typed', async () => {
    const { user, saved } = open();
    await user.click(choose('Carburettors', '3'));
    await typeTheFour(user);
    await user.click(screen.getByRole('checkbox', { name: 'Different jets in the carburettors' }));
    const middle = field('Main jet 2');
    expect((middle as HTMLInputElement).value).toBe('410');
    await user.clear(middle);
    await user.type(middle, '400');
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].carburettors).toEqual([{ main: 410 }, { main: 400 }, { main: 410 }]);
  });

  it('describes the box as a range', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    await user.click(choose('How to enter the box', 'From … to …'));
    await enter(user, 'Smallest', '380');
    await enter(user, 'Largest', '400');
    await user.click(save());
    expect(saved.mock.calls[0]?.[0].box).toEqual([380, 390, 400].map((size) => ({ size, count: 2 })));
  });

  it('explains the sea-level trap beside the pressure', async () => {
    const { user } = open({ units: METRIC_UNITS });
    await typeTheFour(user);
    await user.clear(field('Elevation'));
    await enter(user, 'Elevation', '1600');
    await user.click(choose('Pressure', 'Station'));
    await enter(user, 'Station pressure', '1015');
    await user.tab();
    screen.getByText(/1015.hPa cannot be the station pressure at 1,600.m/);
    await user.click(choose('Pressure', 'Sea level'));
    expect(screen.queryByText(/cannot be the station pressure/)).toBeNull();
  });

  it('makes limits the racer’s own as soon as a number is changed', async () => {
    const { user } = open();
    await user.click(choose('How careful', 'Trail'));
    expect((field('Lean limit') as HTMLInputElement).value).toBe('1');
    await enter(user, 'Lean limit', '.5');
    expect((choose('How careful', 'My own') as HTMLInputElement).checked).toBe(true);
    expect((field('Rich limit') as HTMLInputElement).value).toBe('8');
  });

  it('goes back step by step with Undo', async () => {
    const { user } = open();
    await enter(user, 'Name', 'Blue');
    await user.type(field('Main jet'), '410');
    await user.click(screen.getByRole('button', { name: 'Undo' }));
    expect((field('Main jet') as HTMLInputElement).value).toBe('');
    expect((field('Name') as HTMLInputElement).value).toBe('Blue');
    await user.click(screen.getByRole('button', { name: 'Undo' }));
    expect((field('Name') as HTMLInputElement).value).toBe('');
    expect((screen.getByRole('button', { name: 'Undo' }) as HTMLButtonElement).disabled).toBe(true);
  });

  it('brings unsaved typing back after a reload, and lets go of it once saved', async () => {
    const first = open();
    await enter(first.user, 'Main jet', '41O');
    first.view.unmount();
    const second = open();
    expect((field('Main jet') as HTMLInputElement).value).toBe('41O');
    screen.getByText(/did not save is back/);
    await second.user.click(screen.getByRole('button', { name: 'Start over' }));
    expect((field('Main jet') as HTMLInputElement).value).toBe('');
    await second.user.click(screen.getByRole('button', { name: 'Undo' }));
    expect((field('Main jet') as HTMLInputElement).value).toBe('41O');
    await second.user.clear(field('Main jet'));
    await typeTheFour(second.user);
    await second.user.click(save());
    await waitFor(() => expect(localStorage.length).toBe(0));
    second.view.unmount();
    open();
    expect((field('Main jet') as HTMLInputElement).value).toBe('');
  });

  it('loses nothing when the machine cannot be kept, and says why', async () => {
    const { user } = open({ onSave: async () => 'Another tab changed this machine.' });
    await typeTheFour(user);
    await user.click(save());
    expect((await screen.findByRole('alert')).textContent).toContain('Another tab changed this machine.');
    expect((field('Main jet') as HTMLInputElement).value).toBe('410');
    expect(localStorage.length).toBe(1);
  });

  it('saves an opened machine unchanged where nothing was touched', async () => {
    const { user, saved } = open({ initial: FULL_MACHINE, units: METRIC_UNITS });
    await user.click(save());
    expect(saved.mock.calls[0]?.[0]).toEqual(FULL_MACHINE);
  });

  it('opens what an error hides', async () => {
    const { user } = open();
    await typeTheFour(user);
    const advanced = screen.getByText('Advanced').closest('details');
    expect(advanced?.open).toBe(false);
    await user.clear(field('Power lost to richness (k)'));
    await user.click(save());
    expect(advanced?.open).toBe(true);
    expect(document.activeElement).toBe(field('Power lost to richness (k)'));
  });
});

describe('the marking of the jets', () => {
  it('is asked about where a hole would be 4.10 mm wide, and one tap puts it right', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    expect(screen.queryByText(/a hole of/)).toBeNull();
    await user.click(choose('What the number on a jet means', 'Bore'));
    screen.getByText(/a hole of 4\.00 mm|a hole of 4\.10 mm/);
    await user.click(screen.getByRole('button', { name: 'They are marked by flow' }));
    expect(screen.queryByText(/a hole of/)).toBeNull();
    await user.click(save());
    expect(saved.mock.calls[0]?.[0]).toMatchObject({ jetMarking: 'flow', markingSure: true });
  });

  it('is believed once the person says so, now and when the machine is opened again', async () => {
    const { user, saved, view } = open();
    await typeTheFour(user);
    await user.click(choose('What the number on a jet means', 'Bore'));
    await user.click(screen.getByRole('button', { name: 'No, by bore' }));
    expect(screen.queryByText(/Main jets have holes/)).toBeNull();
    await user.click(save());
    const kept = saved.mock.calls[0]?.[0];
    expect(kept).toMatchObject({ jetMarking: 'bore', markingSure: true });
    view.unmount();
    open({ initial: kept ?? null });
    expect(screen.queryByText(/Main jets have holes/)).toBeNull();
  });

  it('never keeps a machine from being saved', async () => {
    const { user, saved } = open();
    await typeTheFour(user);
    await user.click(choose('What the number on a jet means', 'Bore'));
    await user.click(save());
    expect(saved.mock.calls[0]?.[0]).toMatchObject({ jetMarking: 'bore' });
    expect(saved.mock.calls[0]?.[0]).not.toHaveProperty('markingSure');
  });
});
