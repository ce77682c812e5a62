import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test as base, type ConsoleMessage, expect, type Page } from '@playwright/test';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** 18:15 in the demo night's zone on a January evening. */
export const EVENING = '2027-01-17T00:15:00Z';

/**
 * A page whose every complaint fails the test: errors on the console, broken scripts, requests to strangers. The clock
 * stands at the evening of the demo night. Only where `offlineWorker` is set may the page have a worker, as in a browser
 * that allows none: keeping every page and script anew for each test took half of the browser's time.
 */
export const test = base.extend<{ readonly night: Page; readonly offlineWorker: boolean }>({
  offlineWorker: [false, { option: true }],
  night: async ({ page, baseURL, offlineWorker }, use) => {
    const complaints: string[] = [];
    page.on('console', (message: ConsoleMessage) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('request', (request) => {
      const { protocol, origin } = new URL(request.url());
      if (protocol.startsWith('http') && origin !== baseURL) complaints.push(`foreign: ${request.url()}`);
    });
    if (!offlineWorker)
      await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
    await page.clock.setFixedTime(EVENING);
    await use(page);
    expect(complaints).toEqual([]);
  },
});

/** What axe-core finds against WCAG 2.2 A and AA, in words. */
export async function accessFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    // axe puts itself on the window; it has no types here.
    const { axe } = window as unknown as {
      axe: {
        run: (
          context: Document,
          options: object,
        ) => Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }>;
      };
    };
    const { violations } = await axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
    );
  });
}

/** Whether anything reaches beyond the right edge of the screen. A phone's own `innerWidth` grows with what does. */
export function overflows(page: Page): Promise<boolean> {
  const width = page.viewportSize()?.width ?? 0;
  return page.evaluate((most) => document.documentElement.scrollWidth > most, width);
}
