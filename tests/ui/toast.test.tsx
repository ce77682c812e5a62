// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ToastProvider, useEndToast, useToast } from '@/components/ui/toast';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  cleanup();
});

function Deed({ undo }: { readonly undo: () => void }) {
  const say = useToast();
  return (
    <button type="button" onClick={() => say({ text: 'Saved.', act: { label: 'Undo', do: undo } })}>
      Save
    </button>
  );
}

function NextDeed() {
  const end = useEndToast();
  return (
    <button type="button" onClick={end}>
      Begin
    </button>
  );
}

function saved() {
  const undo = vi.fn();
  render(
    <ToastProvider>
      <Deed undo={undo} />
      <NextDeed />
    </ToastProvider>,
  );
  fireEvent.click(screen.getByRole('button', { name: 'Save' }));
  return undo;
}

const wait = (ms: number) => act(() => vi.advanceTimersByTime(ms));
const undoButton = () => screen.queryByRole('button', { name: 'Undo' });

describe('what was just done', () => {
  it('can be taken back for twenty seconds, and is a part of the page with a name', () => {
    saved();
    expect(screen.getByRole('region', { name: 'Just done' }).textContent).toContain('Saved.');
    wait(19_000);
    expect(undoButton()).not.toBeNull();
    wait(2000);
    expect(undoButton()).toBeNull();
  });

  it('goes as soon as the next act begins, and with it the way back, by keys as well', () => {
    const undo = saved();
    fireEvent.click(screen.getByRole('button', { name: 'Begin' }));
    expect(undoButton()).toBeNull();
    fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true });
    expect(undo).not.toHaveBeenCalled();
    // What is said next stands its whole time.
    fireEvent.click(screen.getByRole('button', { name: 'Save' }));
    wait(19_000);
    expect(undoButton()).not.toBeNull();
  });

  it('is but the way back once it has been read, still with its words for the ear', () => {
    saved();
    const told = screen.getByRole('region', { name: 'Just done' });
    expect(told.className).not.toMatch(/small/);
    wait(7000);
    expect(told.className).toMatch(/small/);
    expect(told.textContent).toContain('Saved.');
    expect(undoButton()).not.toBeNull();
  });

  it('stands as long as somebody is on the way to it by keys', () => {
    const undo = saved();
    for (let tabs = 0; tabs < 10; tabs += 1) {
      wait(15_000);
      fireEvent.keyDown(document.body, { key: 'Tab' });
    }
    fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true });
    expect(undo).toHaveBeenCalledOnce();
    expect(undoButton()).toBeNull();
  });

  it('waits under a dialog, where nobody can reach it', () => {
    saved();
    const dialog = document.createElement('dialog');
    dialog.setAttribute('open', '');
    document.body.append(dialog);
    wait(90_000);
    expect(undoButton()).not.toBeNull();
    dialog.remove();
    wait(21_000);
    expect(undoButton()).toBeNull();
  });

  it('stands still while it holds the focus', () => {
    saved();
    fireEvent.focus(undoButton()!);
    wait(120_000);
    expect(undoButton()).not.toBeNull();
  });
});
