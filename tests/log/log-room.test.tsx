// @vitest-environment jsdom
import { configure, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { LogRoom } from '@/components/log/log-room';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from '@/lib/night/living-demo';
import type { EventRecord } from '@/lib/store/records';
import { followedDemo } from '@/tests/support/followed-demo';
import { knowModalDialogs } from '@/tests/support/modal-dialogs';
import { roomOnStore } from '@/tests/support/room-on-store';
import { chicago } from '../night/night-case';

// The night is planned before its runs are known; on a busy machine that takes a while.
configure({ asyncUtilTimeout: 10_000 });

const room = roomOnStore();
const at = (clock: string) => chicago('2027-01-16', clock);

beforeEach(() => {
  knowModalDialogs();
});

/** The log page at a moment of the demo night, with the night as it was told so far. */
async function open(clock: string, told: (event: EventRecord) => EventRecord = (event) => event) {
  const now = at(clock);
  vi.useFakeTimers({ now, toFake: ['Date'] });
  const demo = followedDemo(now);
  await room.store.put('machines', DEMO_MACHINE_ID, demo.machine, null);
  await room.store.put('events', DEMO_EVENT_ID, told(demo.event), null);
  room.show(<LogRoom />);
  return userEvent.setup({ advanceTimers: vi.advanceTimersByTime });
}

const untold = (event: EventRecord): EventRecord => ({ ...event, made: {}, fitted: {}, fittings: {} });
const button = (name: string | RegExp) => screen.findByRole('button', { name });
const log = async () => (await room.store.list('log')).map(({ value }) => value);
const event = async () => (await room.store.get('events', DEMO_EVENT_ID))!.value;

describe('after a run that was told', () => {
  it('one tap logs it, holds the place, so that a second tap logs nothing more, and says what was noted', async () => {
    const user = await open('21:40');
    const right = await button('Round 4: Good');
    await user.click(right);
    await waitFor(async () => expect(await log()).toHaveLength(1));
    expect(screen.getByRole('button', { name: 'Round 4: Good' })).toBe(right);
    await user.click(right);
    const noted = (await screen.findByText(/^Noted:/)).textContent;
    expect(noted).toMatch(/^Noted: Round 4, good, on 4/);
    await waitFor(() => expect(screen.queryByRole('button', { name: 'Round 4: Good' })).toBeNull());
    expect((await log()).map(({ run }) => run)).toEqual(['Round 4']);
    await user.click(await button('Take Round 4 back'));
    await button('Round 4: Good');
    expect(screen.queryByText(/^Noted:/)).toBeNull();
    expect(await log()).toEqual([]);
  });

  it('holds the rows below too, where the next one would slide under the finger', async () => {
    const user = await open('21:40');
    await button('Round 4: Good');
    await user.click(screen.getByText(/^Earlier runs not in the log/));
    const third = await button('Round 3: Rich');
    await user.click(third);
    await waitFor(async () => expect(await log()).toHaveLength(1));
    expect(screen.getByRole('button', { name: 'Round 3: Rich' })).toBe(third);
    await user.click(screen.getByRole('button', { name: 'Round 2: Rich' }));
    expect(await log()).toHaveLength(1);
  });

  it('cylinder by cylinder: the leanest is the verdict, and what was not looked at is said', async () => {
    const user = await open('21:40');
    await user.click(await button('Round 4: By cylinder'));
    const dialog = within(await screen.findByRole('dialog'));
    expect((dialog.getByRole('button', { name: 'Put it into the log' }) as HTMLButtonElement).disabled).toBe(
      true,
    );
    const cylinder = (place: number) => within(dialog.getByRole('group', { name: `Cylinder ${place}` }));
    await user.click(cylinder(1).getByRole('radio', { name: 'Good' }));
    await user.click(cylinder(2).getByRole('radio', { name: 'Lean' }));
    await user.selectOptions(dialog.getByLabelText('By how many sizes lean'), '2');
    await user.click(dialog.getByRole('button', { name: 'Put it into the log' }));
    await waitFor(async () => expect(await log()).toHaveLength(1));
    expect((await log())[0]).toMatchObject({ verdict: 'lean', verdicts: ['right', 'lean', null], sizes: 2 });
    await screen.findByText(/was logged lean in cylinder 2: planned/);
    const table = within(screen.getByRole('table', { name: 'Runs, the newest first' }));
    table.getByText('2 sizes lean in cylinder 2, good in cylinder 1, cylinder 3 not looked at');
  });

  it('an entry is changed to cylinder by cylinder in its form, and comes back so', async () => {
    const user = await open('21:40');
    await user.click(await button('Round 4: Rich'));
    await user.click(await button(/^Edit Round 4/));
    const form = within(await screen.findByRole('dialog'));
    await user.click(form.getByRole('radio', { name: 'By cylinder' }));
    const third = within(form.getByRole('group', { name: 'Cylinder 3' }));
    await user.click(third.getByRole('radio', { name: 'Lean' }));
    await user.click(form.getByRole('button', { name: 'Save run' }));
    await waitFor(async () => expect((await log())[0]?.verdicts).toEqual([null, null, 'lean']));
    expect((await log())[0]?.verdict).toBe('lean');
    await user.click(await button(/^Edit Round 4/));
    const again = within(await screen.findByRole('dialog'));
    const shown = within(again.getByRole('group', { name: 'Cylinder 3' }));
    expect((shown.getByRole('radio', { name: 'Lean' }) as HTMLInputElement).checked).toBe(true);
  });

  it('lean changes the plan at once and says so, with what to mind; right on those jets ends it', async () => {
    const user = await open('21:40');
    await button('Round 4: Lean');
    await user.click(screen.getByText(/^Earlier runs not in the log/));
    await user.click(await button('Round 3: Lean'));
    const said = (await screen.findByText(/^Round 3 was logged lean: planned/)).closest('[role=note]')!;
    expect(said.textContent).toMatch(/It is one verdict\./);
    expect(said.textContent).toMatch(/The plan now: Put in 440 430 440, 21:4\d, /);
    expect(said.textContent).toMatch(/read plugs and piston wash/);
    expect(said.textContent).toMatch(/lift off/);
    await waitFor(() =>
      expect(screen.getByRole('button', { name: 'Round 4: Good' }).getAttribute('aria-disabled')).toBe(
        'false',
      ),
    );
    await user.click(screen.getByRole('button', { name: 'Round 4: Good' }));
    await screen.findByText(/^Round 4 was logged good on .*(counted in|baseline again)\.$/);
  });
});

describe('after a run that nobody told of', () => {
  it('asks what was in before it asks how it was, keeps the answer as told, and logs no guess', async () => {
    const user = await open('19:20', untold);
    await screen.findByText('Round 1: what was in?');
    expect(screen.queryByRole('button', { name: 'Round 1: Lean' })).toBeNull();
    const answer = await button('Round 1: 410 400 410');
    await user.click(answer);
    await user.click(answer);
    await button('Round 1: Lean');
    const told = { run: 0, setting: { mains: [410, 400, 410], trim: null } };
    expect((await event()).made[DEMO_MACHINE_ID]).toEqual([told]);
    expect(await log()).toEqual([]);
    await waitFor(() =>
      expect(screen.getByRole('button', { name: 'Round 1: Lean' }).getAttribute('aria-disabled')).toBe(
        'false',
      ),
    );
    await user.click(screen.getByRole('button', { name: 'Round 1: Lean' }));
    await waitFor(async () => expect(await log()).toHaveLength(1));
    expect((await log())[0]).toMatchObject({ run: 'Round 1', verdict: 'lean', setting: told.setting });
  });

  it('offers what was planned and something else, and the answer can be taken back', async () => {
    const planned = { mains: [420, 410, 420], trim: null };
    const user = await open('19:20', (record) => ({
      ...untold(record),
      accepted: { [DEMO_MACHINE_ID]: record.event.runs.map(() => planned) },
    }));
    await user.click(await button('Round 1: 420 410 420, as planned'));
    await waitFor(async () =>
      expect((await event()).made[DEMO_MACHINE_ID]).toEqual([{ run: 0, setting: planned }]),
    );
    expect((await event()).fitted[DEMO_MACHINE_ID]).toEqual(planned);
    await user.click(await button('Undo'));
    await waitFor(async () => expect((await event()).made).toEqual({}));
    const other = await button('Round 1: Something else');
    await waitFor(() => expect(other.getAttribute('aria-disabled')).toBe('false'));
    await user.click(other);
    const dialog = within(await screen.findByRole('dialog'));
    await user.selectOptions(dialog.getByLabelText('Main jet, carburettor 2'), '390');
    await user.click(dialog.getByRole('button', { name: 'Done: it is in' }));
    await button('Round 1: Lean');
    expect((await event()).made[DEMO_MACHINE_ID]?.[0]?.setting.mains).toEqual([410, 390, 410]);
  });
});
