// @vitest-environment jsdom
import { act, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeAll, expect, it } from 'vitest';
import { DisplayDialog } from '@/components/shell/display-dialog';
import { ThemeKeeper } from '@/components/shell/theme-keeper';
import { useWrite } from '@/components/store/use-write';
import { knowModalDialogs } from '@/tests/support/modal-dialogs';
import { roomOnStore } from '@/tests/support/room-on-store';

const room = roomOnStore();
beforeAll(knowModalDialogs);

/** A store that is opened by the test, as late as it likes. */
function lateStore() {
  let open: (opened: unknown) => void = () => undefined;
  const opened = new Promise<unknown>((resolve) => {
    open = resolve;
  });
  return { opened, open: () => act(async () => open(null)) };
}

function AddBox({ name }: { readonly name: string }) {
  const write = useWrite();
  return (
    <button type="button" onClick={() => void write.add('boxes', { name, entries: [] }, `${name} is added.`)}>
      Add
    </button>
  );
}

it('keeps what is chosen while the store is still being opened, each choice of it', async () => {
  const { opened, open } = lateStore();
  room.show(
    <>
      <ThemeKeeper />
      <DisplayDialog open onClose={() => undefined} />
    </>,
    opened,
  );
  const choose = (name: string) => userEvent.click(screen.getByRole('radio', { name, hidden: true }));
  await choose('Night');
  await choose('°C');
  await open();
  await waitFor(() => expect(document.documentElement.dataset.theme).toBe('night'));
  await waitFor(async () =>
    expect(await room.store.get('preferences', 'preferences')).toMatchObject({
      value: { theme: 'night', temperature: 'C' },
    }),
  );
  expect(screen.getByRole<HTMLInputElement>('radio', { name: '°C', hidden: true }).checked).toBe(true);
});

it('does what was pressed before the store was open, once it is, and says so then', async () => {
  const { opened, open } = lateStore();
  room.show(<AddBox name="Truck" />, opened);
  await userEvent.click(screen.getByRole('button', { name: 'Add' }));
  expect(screen.queryByText('Truck is added.')).toBeNull();
  expect(await room.store.list('boxes')).toEqual([]);
  await open();
  await screen.findByText('Truck is added.');
  expect((await room.store.list('boxes')).map(({ value }) => value.name)).toEqual(['Truck']);
});
