import { type BrowserContext, type BrowserContextOptions, test as base } from '@playwright/test';
import { instantOf, isFixed, NOW } from './clock';

type Setting = {
  /**
   * Where the clock of every page stands: an instant (ISO 8601) for what is told with fixed dates, or a clock such as
   * '18:15' for what happens at that time of tonight. `test.use({ now: '21:40' })`.
   */
  readonly now: string;
  /**
   * Whether the first screen of a first visit may stand before its night is kept. Most tests take it for a sign that the
   * page is awake and the demo in the store.
   */
  readonly earlyAnswer: boolean;
  /** Another browser context beside the test's own, under the same clock. */
  readonly newContext: (options?: BrowserContextOptions) => Promise<BrowserContext>;
  /** A browser whose profile stays on disk when it is shut, under the same clock. */
  readonly openProfile: (folder: string) => Promise<BrowserContext>;
};

/** The page's worker is then asked nothing by its name. */
async function withoutEarlyAnswer(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    // Where a test takes the worker away, there is none to change.
    if (!('Worker' in globalThis)) return;
    globalThis.Worker = class extends Worker {
      constructor(file: string | URL) {
        super(file);
      }
    };
  });
}

/**
 * What every browser test is made with: no page sees the machine's clock. The server and its weather run on from `NOW`
 * (playwright.config.ts).
 */
export const test = base.extend<Setting>({
  now: [NOW, { option: true }],
  earlyAnswer: [false, { option: true }],
  context: async ({ context, now, earlyAnswer }, use, testInfo) => {
    testInfo.skip(
      process.env.TEST_NOW !== undefined && isFixed(now),
      'Has an instant of its own: the same under every clock.',
    );
    await context.clock.setFixedTime(instantOf(now));
    if (!earlyAnswer) await withoutEarlyAnswer(context);
    await use(context);
  },
  newContext: async ({ browser, now }, use) => {
    const opened: BrowserContext[] = [];
    await use(async (options) => {
      const context = await browser.newContext(options);
      opened.push(context);
      await context.clock.setFixedTime(instantOf(now));
      await withoutEarlyAnswer(context);
      return context;
    });
    for (const context of opened) await context.close();
  },
  openProfile: async ({ playwright, now }, use, testInfo) => {
    const { launchOptions = {}, viewport, baseURL, timezoneId } = testInfo.project.use;
    await use(async (folder) => {
      const context = await playwright.chromium.launchPersistentContext(testInfo.outputPath(folder), {
        ...launchOptions,
        viewport: viewport ?? null,
        ...(timezoneId === undefined ? {} : { timezoneId }),
        ...(baseURL === undefined ? {} : { baseURL }),
      });
      await context.clock.setFixedTime(instantOf(now));
      return context;
    });
  },
});
