// @vitest-environment jsdom
import { act, renderHook, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useSyncExternalStore } from 'react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { MachinesPage } from '@/components/machine/machines-page';
import { useOpenForm } from '@/components/machine/use-open-form';
import { writeTo } from '@/components/store/use-write';
import { expectOk } from '@/lib/result/result';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { newMachineRecord } from '@/lib/store/new-machine-record';
import { recordWithMachine } from '@/lib/store/record-with-machine';
import { tableCache } from '@/lib/store/table-cache';
import { roomOnStore } from '@/tests/support/room-on-store';
import { FULL_MACHINE } from './machines';

// The address as the framework keeps it: changes made through the history are seen by those who read it.
vi.mock('next/navigation', () => {
  const subscribe = (listener: () => void) => {
    window.addEventListener('popstate', listener);
    return () => window.removeEventListener('popstate', listener);
  };
  const useAddress = <T,>(read: () => T): T => useSyncExternalStore(subscribe, read);
  return {
    usePathname: () => useAddress(() => window.location.pathname),
    useSearchParams: () => new URLSearchParams(useAddress(() => window.location.search)),
  };
});

const room = roomOnStore();

beforeEach(() => {
  localStorage.clear();
  window.history.replaceState(null, '', '/machines');
  for (const way of ['pushState', 'replaceState'] as const) {
    const plain = History.prototype[way];
    vi.spyOn(window.history, way).mockImplementation((...given) => {
      plain.apply(window.history, given);
      window.dispatchEvent(new PopStateEvent('popstate'));
    });
  }
});

function open() {
  room.show(<MachinesPage />);
  return userEvent.setup({ delay: null });
}

const names = async () => (await room.store.list('machines')).map(({ value }) => value.machine.name);
const put = async (id: string) =>
  expectOk(await room.store.put('machines', id, newMachineRecord(FULL_MACHINE), null));
const field = (name: string) =>
  screen.getByLabelText<HTMLInputElement>(name, { selector: 'input, textarea' });

async function enter(user: ReturnType<typeof userEvent.setup>, name: string, text: string) {
  await user.clear(field(name));
  await user.click(field(name));
  await user.paste(text);
}

describe('the machines page', () => {
  it('starts empty and takes a first machine', async () => {
    const user = open();
    await user.click(await screen.findByText('Add a machine'));
    await enter(user, 'Name', 'Blue 600');
    await enter(user, 'Main jet', '410');
    await enter(user, 'Jets in the box', '400x3 410x3 420');
    await enter(user, 'Temperature', '14');
    await enter(user, 'Elevation', '1150');
    await user.click(screen.getByText('Save machine'));
    await screen.findByRole('heading', { name: 'Blue 600' });
    screen.getByText('Mains 410, proven at 14 °F and 1,150 ft. 7 jets in the box.');
    await user.click(screen.getByText('Undo'));
    await waitFor(() => expect(screen.queryByRole('heading', { name: 'Blue 600' })).toBeNull());
    expect(await names()).toEqual([]);
  });

  it('edits a machine, and undoes it', async () => {
    await put('m');
    const user = open();
    await user.click(await screen.findByRole('button', { name: 'Edit Blue 600' }));
    expect(window.location.search).toBe('?edit=m');
    await enter(user, 'Name', 'Red 800');
    await user.click(screen.getByText('Save machine'));
    await screen.findByText('Red 800 is saved.');
    expect(await names()).toEqual(['Red 800']);
    expect(window.location.search).toBe('');
    await user.click(screen.getByText('Undo'));
    await waitFor(async () => expect(await names()).toEqual(['Blue 600']));
  });

  it('duplicates a machine under a name of its own', async () => {
    await put('m');
    const user = open();
    await user.click(await screen.findByRole('button', { name: 'Duplicate Blue 600' }));
    await waitFor(async () => expect(await names()).toEqual(['Blue 600', 'Blue 600 (copy)']));
  });

  it('deletes at once and brings back on Undo', async () => {
    await put('m');
    const user = open();
    await user.click(await screen.findByRole('button', { name: 'Delete Blue 600' }));
    await screen.findByText('Blue 600 is deleted.');
    await waitFor(async () => expect(await names()).toEqual([]));
    await user.click(screen.getByText('Undo'));
    await waitFor(async () => expect(await names()).toEqual(['Blue 600']));
  });

  it('overwrites nothing that another tab wrote while the form was open, until told so', async () => {
    const stored = await put('m');
    const user = open();
    await user.click(await screen.findByRole('button', { name: 'Edit Blue 600' }));
    const elsewhere = recordWithMachine(stored.value, { ...FULL_MACHINE, name: 'Green 700' });
    expectOk(await room.store.put('machines', 'm', elsewhere, stored.revision));
    await enter(user, 'Name', 'Red 800');
    await user.click(screen.getByText('Save machine'));
    expect((await screen.findByRole('alert')).textContent).toContain('it is now called Green 700');
    expect(await names()).toEqual(['Green 700']);
    expect(field('Name').value).toBe('Red 800');
    await user.click(screen.getByText('Save machine'));
    await waitFor(async () => expect(await names()).toEqual(['Red 800']));
  });

  it('keeps the form that was opened while another was still being closed', () => {
    const { result } = renderHook(() => useOpenForm());
    act(() => result.current.show('a'));
    const { close } = result.current;
    act(() => result.current.show('b'));
    act(close);
    expect(result.current.open).toBe('b');
    act(() => result.current.close());
    expect(result.current.open).toBeNull();
  });
});

describe('a stored machine', () => {
  it('has the baseline that is in force changed with it, and no other', () => {
    const other = { id: 'old', mains: [400, 390, 400], trim: 2, baseline: FULL_MACHINE.baseline };
    const active = { id: 'now', mains: [420, 410, 420], trim: 4, baseline: FULL_MACHINE.baseline };
    const record = {
      ...newMachineRecord(FULL_MACHINE),
      baselines: [other, active],
      activeBaselineId: 'now',
    };
    const shown = machineWithBaseline(record);
    expect(shown.carburettors.map(({ main }) => main)).toEqual([420, 410, 420]);
    const edited = recordWithMachine(record, { ...shown, baseline: { ...shown.baseline, judged: 'edge' } });
    expect(machineWithBaseline(edited).baseline.judged).toBe('edge');
    expect(edited.baselines[0]).toEqual(other);
    expect(edited.baselines[1]).toMatchObject({ id: 'now', mains: [420, 410, 420], trim: 4 });
  });

  it('that was deleted elsewhere is not written again behind anyone’s back', async () => {
    const stored = await put('m');
    expectOk(await room.store.remove('machines', 'm', stored.revision));
    const say = vi.fn();
    const write = writeTo({ store: room.store, tables: tableCache(room.store) }, say);
    const edited = recordWithMachine(stored.value, FULL_MACHINE);
    const { refused } = await write.over({ table: 'machines', stored }, () => edited, 'It is saved.');
    expect(refused).toContain('deleted in another tab');
    expect(say).not.toHaveBeenCalled();
    expect(await names()).toEqual([]);
  });
});
