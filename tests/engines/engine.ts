import { test as base } from '@playwright/test';
import { openFirefox } from './firefox';
import { openWebkit } from './webkit';

/** One window of a browser, driven over a W3C protocol. Its profile is new, and gone when it is closed. */
export type Engine = {
  readonly go: (path: string) => Promise<void>;
  readonly back: () => Promise<void>;
  /** Runs a function in the page; it sees its arguments and the page and nothing of this file. */
  readonly ask: <A extends readonly unknown[], R>(run: (...args: A) => R, ...args: A) => Promise<R>;
  /** What was written to the console as an error, or thrown and caught by nobody, since the window was opened. */
  readonly errors: () => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
};

export type EngineName = 'webkit' | 'firefox';

const OPEN: Record<EngineName, (origin: string) => Promise<Engine>> = {
  webkit: openWebkit,
  firefox: openFirefox,
};

export const test = base.extend<{ engineName: EngineName; engine: Engine }>({
  engineName: ['webkit', { option: true }],
  engine: async ({ engineName, baseURL }, use) => {
    const engine = await OPEN[engineName](baseURL ?? '');
    await use(engine);
    await engine.close();
  },
});
