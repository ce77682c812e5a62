import { type Browser, type BrowserContext, chromium, devices, type Page } from '@playwright/test';
import { chromiumHere } from '@/.scripts/find-chromium.mjs';

type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds on the trace's own clock. */
  readonly ts: number;
  /** Microseconds of processor time, so that a busy machine does not count. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

/** Processor time of tasks of a page's main thread, in milliseconds, longest first. */
export type Tasks = {
  readonly all: readonly number[];
  /** Those that began once something could be seen. */
  readonly sincePaint: readonly number[];
};

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumHere() ?? undefined,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
    ],
  });
}

/** A phone in the zone of the demo lake that has never opened the app. */
export function newPhone(browser: Browser): Promise<BrowserContext> {
  return browser.newContext({
    ...devices['Pixel 5'],
    viewport: { width: 360, height: 740 },
    timezoneId: 'America/Chicago',
  });
}

/** What a page's main thread does while `work` is done. */
export async function tasksDuring(
  browser: Browser,
  page: Page,
  work: () => Promise<unknown>,
): Promise<Tasks> {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'loading'] });
  await work();
  const trace: { readonly traceEvents: readonly TraceEvent[] } = JSON.parse(
    (await browser.stopTracing()).toString(),
  );
  const main = new Set(
    trace.traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid}/${tid}`),
  );
  const painted = trace.traceEvents.find(({ name }) => name === 'firstContentfulPaint')?.ts ?? 0;
  const tasks = trace.traceEvents.filter(
    ({ name, ph, pid, tid }) => ph === 'X' && name.endsWith('RunTask') && main.has(`${pid}/${tid}`),
  );
  return {
    all: processorTimes(tasks),
    sincePaint: processorTimes(tasks.filter(({ ts }) => ts >= painted)),
  };
}

const processorTimes = (tasks: readonly TraceEvent[]): readonly number[] =>
  tasks.map(({ tdur = 0 }) => tdur / 1000).sort((a, b) => b - a);
