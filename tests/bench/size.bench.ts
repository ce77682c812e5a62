import type { Browser, Page } from '@playwright/test';
import { kilobytes, scrollThrough, watchTransfers } from '@/tests/support/transfers';
import { startBuiltApp } from './built-app';
import { tell, times } from './outcome';
import { launchBrowser, newPhone } from './phone';

/** What a first visit to the night page weighs over the wire, against a page of words of the same build. */
const WANTED = { first: 110, answer: 350, all: 350, requests: 25 };

type Weight = {
  /** What runs until the first screen can be read: the worker on the night page, else scripts that the HTML names [kB]. */
  readonly first: number;
  /** All until the page comes to rest [kB]. */
  readonly answer: number;
  /** All once it was looked at to its end [kB]. */
  readonly all: number;
  readonly requests: number;
};

/** The page's worker, which asks for its own script: the page's network tells nothing of it, its timings do. */
function workerKilobytes(page: Page): Promise<number> {
  return page.evaluate(() => {
    const files = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
    return (
      files
        .filter(({ name }) => name.endsWith('/planner.js'))
        .reduce((sum, { transferSize }) => sum + transferSize, 0) / 1000
    );
  });
}

async function weigh(browser: Browser, address: string): Promise<Weight> {
  const context = await newPhone(browser);
  try {
    // As in a browser that allows no worker: what it keeps for later is not part of the page.
    await context.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
    const page = await context.newPage();
    const transfers = await watchTransfers(page);
    await page.goto(address, { waitUntil: 'networkidle' });
    const answer = transfers();
    await scrollThrough(page);
    await page.waitForLoadState('networkidle');
    const all = transfers();
    const worker = await workerKilobytes(page);
    const named = kilobytes(answer.filter(({ kind, first }) => first && kind === 'Script'));
    return {
      first: named + worker,
      answer: kilobytes(answer) + worker,
      all: kilobytes(all) + worker,
      requests: all.length + (worker > 0 ? 1 : 0),
    };
  } finally {
    await context.close();
  }
}

const app = await startBuiltApp();
const browser = await launchBrowser();
try {
  const night = await weigh(browser, `${app.url}/`);
  const words = await weigh(browser, `${app.url}/about`);
  const row = (what: string, part: 'first' | 'answer' | 'all') =>
    tell({
      what,
      ours: `${night[part].toFixed(0)} kB`,
      peer: `/about, a page of words, ${words[part].toFixed(0)} kB`,
      ratio: `${times(night[part] / words[part])} as much`,
      wanted: { goal: `${WANTED[part]} kB or less`, met: night[part] <= WANTED[part] },
    });
  row('script until the first screen can be read', 'first');
  row('   everything until the picture is looked at', 'answer');
  row('   everything with the chart', 'all');
  tell({
    what: '   requests',
    ours: String(night.requests),
    peer: `/about ${words.requests}`,
    ratio: `${times(night.requests / words.requests)} as many`,
    wanted: { goal: `${WANTED.requests} or less`, met: night.requests <= WANTED.requests },
  });
} finally {
  await browser.close();
  await app.stop();
}
