import { afterEach, beforeEach, expect, vi } from 'vitest';

// Anything the code complains about on the console is a failure: warnings nobody reads are how faults hide.
beforeEach(() => {
  vi.spyOn(console, 'error');
  vi.spyOn(console, 'warn');
});

afterEach(() => {
  expect(console.error).not.toHaveBeenCalled();
  expect(console.warn).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});
