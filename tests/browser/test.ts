import { type BrowserContext, type BrowserContextOptions, test as base } from '@playwright/test';
import { instantOf, isFixed, NOW } from './clock';

type Clocks = {
  /**
   * Where the clock of every page stands: an instant (ISO 8601) for what is told with fixed dates, or a clock such as
   * '18:15' for what happens at that time of tonight. `test.use({ now: '21:40' })`.
   */
  readonly now: string;
  /** Another browser context beside the test's own, under the same clock. */
  readonly newContext: (options?: BrowserContextOptions) => Promise<BrowserContext>;
  /** A browser whose profile stays on disk when it is shut, under the same clock. */
  readonly openProfile: (folder: string) => Promise<BrowserContext>;
};

/**
 * What every browser test is made with: no page sees the machine's clock. The server and its weather run on from `NOW`
 * (playwright.config.ts).
 */
export const test = base.extend<Clocks>({
  now: [NOW, { option: true }],
  context: async ({ context, now }, use, testInfo) => {
    testInfo.skip(
      process.env.TEST_NOW !== undefined && isFixed(now),
      'Has an instant of its own: the same under every clock.',
    );
    await context.clock.setFixedTime(instantOf(now));
    await use(context);
  },
  newContext: async ({ browser, now }, use) => {
    const opened: BrowserContext[] = [];
    await use(async (options) => {
      const context = await browser.newContext(options);
      opened.push(context);
      await context.clock.setFixedTime(instantOf(now));
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
