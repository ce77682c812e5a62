// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { StrictMode } from 'react';
import { renderToString } from 'react-dom/server';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Asleep } from '@/components/shell/asleep';
import { ASLEEP_SCRIPT } from '@/components/shell/asleep-script';
import { AWAKE } from '@/lib/planner/early-start';

beforeEach(() => {
  vi.useFakeTimers();
  document.body.innerHTML = renderToString(<Asleep />);
});
afterEach(() => {
  vi.useRealTimers();
  cleanup();
  document.body.innerHTML = '';
  document.documentElement.removeAttribute(AWAKE);
  globalThis.heavyAirPressed = undefined;
});

const run = () => new Function(ASLEEP_SCRIPT)();
const isShown = () => document.getElementById('asleep')?.hidden === false;

describe('a page that does not wake up', () => {
  it('says so after a while, and which browsers it needs', () => {
    run();
    vi.advanceTimersByTime(11_000);
    expect(isShown()).toBe(false);
    vi.advanceTimersByTime(2000);
    expect(isShown()).toBe(true);
    expect(screen.getByRole('alert').textContent).toMatch(
      /has not started.*Safari 16\.4.*reload|reload.*Safari 16\.4/,
    );
  });

  it('says so at once where the browser cannot read a script', () => {
    run();
    dispatchEvent(new ErrorEvent('error', { error: new SyntaxError('unexpected token') }));
    vi.advanceTimersByTime(1);
    expect(isShown()).toBe(true);
  });

  it('says nothing of any other error, nor once it is awake', () => {
    run();
    dispatchEvent(new ErrorEvent('error', { error: new TypeError('something else') }));
    vi.advanceTimersByTime(1);
    expect(isShown()).toBe(false);
    document.body.innerHTML = '';
    render(<Asleep />);
    vi.advanceTimersByTime(60_000);
    expect(isShown()).toBe(false);
  });

  it('takes its words back where it wakes up late', () => {
    run();
    vi.advanceTimersByTime(13_000);
    expect(isShown()).toBe(true);
    document.body.innerHTML = '';
    render(<Asleep />);
    expect(isShown()).toBe(false);
  });

  it('does what was pressed last before, once, when it wakes up', () => {
    run();
    const pressed = vi.fn();
    const button = document.body.appendChild(document.createElement('button'));
    button.innerHTML = '<span>Display</span>';
    button.querySelector('span')?.click();
    button.addEventListener('click', pressed);
    // As while developing, where every effect is run twice.
    render(
      <StrictMode>
        <Asleep />
      </StrictMode>,
    );
    expect(pressed).toHaveBeenCalledOnce();
    cleanup();
    button.click();
    expect(pressed).toHaveBeenCalledTimes(2);
  });
});
