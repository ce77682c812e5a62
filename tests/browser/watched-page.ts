import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type ConsoleMessage, expect, type Page } from '@playwright/test';
import { test as base } from './test';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Tried on a wide screen too: for what is laid out differently there. Journeys are tried on the phone they are made for. */
export const ON_DESK = { tag: '@desk' };

/**
 * A page whose every complaint fails the test: errors on the console, broken scripts, requests to strangers. Only
 * where `offlineWorker` is set may the page have a worker, as in a browser that allows none: keeping every page and
 * script anew for each test took half of the browser's time.
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
    await use(page);
    expect(complaints).toEqual([]);
  },
});

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

type Looked = {
  readonly rules?: readonly string[];
  /** The part of the page that is looked at; all of it where not told. */
  readonly within?: string;
};

/** What axe-core finds against WCAG 2.2 A and AA, in words. */
export async function accessFaults(
  page: Page,
  { rules = RULES, within = 'html' }: Looked = {},
): Promise<readonly string[]> {
  // Once in a document is enough.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return page.evaluate(
    async ([runOnly, part]) => {
      // axe puts itself on the window; it has no types here.
      const { axe } = window as unknown as {
        axe: {
          run: (
            context: string,
            options: object,
          ) => Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }>;
        };
      };
      // What grew is measured in the next frame, and what scrolls can be reached by keyboard from the one after.
      await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
      const { violations } = await axe.run(part, { runOnly, resultTypes: ['violations'], preload: false });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
      );
    },
    [rules, within] as const,
  );
}

/** Only colours differ from theme to theme. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];
/** Only the layout differs from size to size. */
const LAYOUT_RULES = ['target-size', 'scrollable-region-focusable', 'color-contrast'];
/** The narrowest screen (WCAG 2.2, 1.4.10), tried with large text as well. */
const NARROWEST = 320;

/**
 * What is wrong with a page as it stands, or a part of it, by day, by night and with text twice as large, as a
 * browser's own setting makes it.
 */
export async function faultsInEveryLook(page: Page, within = 'html'): Promise<readonly string[]> {
  const found = async (look: string, faults: Promise<readonly string[]>) =>
    (await faults).map((fault) => `${look}: ${fault}`);
  await page.emulateMedia({ colorScheme: 'light' });
  const day = await found('by day', accessFaults(page, { within }));
  await page.emulateMedia({ colorScheme: 'dark' });
  const night = await found('by night', accessFaults(page, { rules: COLOUR_RULES, within }));
  await page.emulateMedia({ colorScheme: 'light' });
  const size = page.viewportSize() ?? { width: NARROWEST, height: 740 };
  if (size.width < 600) await page.setViewportSize({ ...size, width: NARROWEST });
  await setTextSize(page, '200%');
  const large = await found('large', accessFaults(page, { rules: LAYOUT_RULES, within }));
  const cut = await found('large', cutOff(page));
  const wide = (await overflows(page)) ? ['large: reaches beyond the screen'] : [];
  await setTextSize(page, '');
  await page.setViewportSize(size);
  return [...day, ...night, ...large, ...cut, ...wide];
}

function setTextSize(page: Page, size: string): Promise<void> {
  return page.evaluate((fontSize) => {
    document.documentElement.style.fontSize = fontSize;
    // Laid out anew before anything is measured.
    return new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve())));
  }, size);
}

/** Words that cannot be read whole: cut by the box they stand in, or over the edge of their own button. */
async function cutOff(page: Page): Promise<readonly string[]> {
  await drawFarParts(page, true);
  const cut = await wordsCut(page);
  await drawFarParts(page, false);
  return cut;
}

/** What is far from the screen is laid out when it comes near, if the page says so; here it is for as long as it is measured. */
function drawFarParts(page: Page, drawn: boolean): Promise<void> {
  return page.evaluate((isDrawn) => {
    for (const part of document.querySelectorAll<HTMLElement>('body *'))
      if (getComputedStyle(part).contentVisibility === 'auto' || part.style.contentVisibility !== '')
        part.style.contentVisibility = isDrawn ? 'visible' : '';
    return new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve())));
  }, drawn);
}

function wordsCut(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    /** Where a person can scroll to the rest, nothing is cut. */
    const cutter = (element: Element): Element | null => {
      for (let box = element.parentElement; box !== null; box = box.parentElement) {
        const { overflowX } = getComputedStyle(box);
        if (overflowX === 'hidden' || overflowX === 'clip') return box;
        if (overflowX !== 'visible') return null;
      }
      return null;
    };
    const hasWords = (element: Element) =>
      [...element.childNodes].some(({ nodeType, nodeValue }) => nodeType === 3 && nodeValue?.trim() !== '');
    return [...document.querySelectorAll('body :not(script, style, svg *, option)')].flatMap((element) => {
      const { left, right, top, width } = element.getBoundingClientRect();
      // What is for the ear only is one pixel wide.
      if (width <= 1 || !hasWords(element)) return [];
      const box = cutter(element)?.getBoundingClientRect();
      if (box !== undefined && box.width <= 1) return [];
      // Left out where it has no room, and for the eye alone: not there is not cut.
      if (box !== undefined && top >= box.bottom && element.closest('[aria-hidden]') !== null) return [];
      const cut = box !== undefined && (left < box.left - 1 || right > box.right + 1);
      const spills = element.clientWidth > 0 && element.scrollWidth > element.clientWidth + 1;
      return cut || spills ? [`cut off: ${element.outerHTML.slice(0, 160)}`] : [];
    });
  });
}

/** Whether anything reaches beyond the right edge of the screen. A phone's own `innerWidth` grows with what does. */
export function overflows(page: Page): Promise<boolean> {
  const width = page.viewportSize()?.width ?? 0;
  return page.evaluate((most) => document.documentElement.scrollWidth > most, width);
}
