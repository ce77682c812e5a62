import { threadId } from 'node:worker_threads';
import { afterAll, afterEach, beforeEach, expect, vi } from 'vitest';
import { quickenLabels } from './quick-labels';

// Whatever language the machine speaks: clock times are those of the 24-hour clock unless a test says otherwise.
if (typeof navigator !== 'undefined')
  Object.defineProperty(navigator, 'language', { value: 'en-GB', configurable: true });

// Threads of one process hear each other on a channel of the same name, as tabs do: each gets names of its own.
const OWN_CHANNELS = Symbol.for('channels of this thread');
if (!(OWN_CHANNELS in globalThis)) {
  const Shared = globalThis.BroadcastChannel;
  class OwnChannel extends Shared {
    constructor(name: string) {
      super(`${name}, thread ${threadId}`);
    }
  }
  Object.assign(globalThis, { BroadcastChannel: OwnChannel, [OWN_CHANNELS]: true });
}

// A page without a layout has no sight to come into.
if (typeof Element !== 'undefined') Element.prototype.scrollIntoView ??= () => undefined;

// Nor has it a pen: words are as wide as they are taken to be where nothing can be drawn.
if (typeof HTMLCanvasElement !== 'undefined') HTMLCanvasElement.prototype.getContext = () => null;

if (typeof HTMLLabelElement !== 'undefined') quickenLabels();

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

// Files share a thread, and with it the timers: false ones would keep the next file waiting for ever.
afterAll(() => {
  if ('clock' in setTimeout) throw new Error('the timers are still false at the end of this file');
});
