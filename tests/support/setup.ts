import { afterEach, beforeEach, expect, vi } from 'vitest';

// Anything the code complains about on the console is a failure: warnings nobody reads are how faults hide.
// Whatever language the machine speaks: clock times are those of the 24-hour clock unless a test says otherwise.
if (typeof navigator !== 'undefined')
  Object.defineProperty(navigator, 'language', { value: 'en-GB', configurable: true });

beforeEach(() => {
  vi.spyOn(console, 'error');
  vi.spyOn(console, 'warn');
});

afterEach(() => {
  expect(console.error).not.toHaveBeenCalled();
  expect(console.warn).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});
