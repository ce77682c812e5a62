import { expect, type Page } from '@playwright/test';

export type Stop = {
  /** What a screen reader would call it, nearly: its label or its words. */
  readonly name: string;
  readonly lost: boolean;
  /** Has a ring around it, or around the box it stands for. */
  readonly ring: boolean;
  /** What lies over the middle of what is on the screen of it; null: nothing, it is seen. */
  readonly under: string | null;
};

/** Where the focus is, and whether it can be seen there. */
function stopNow(page: Page): Promise<Stop> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body)
      return { name: '', lost: true, ring: false, under: null };
    const byId = (element.getAttribute('aria-labelledby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id));
    const labels = 'labels' in element && element.labels instanceof NodeList ? [...element.labels] : [];
    const said =
      [...byId, ...labels]
        .map((label) => label?.textContent ?? '')
        .join(' ')
        .trim() || element.textContent;
    const shown = element.closest('label') ?? element;
    const ringOf = (each: Element) => {
      const { outlineStyle, outlineWidth } = getComputedStyle(each);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
    };
    const { left, right, top, bottom } = shown.getBoundingClientRect();
    const middle = (from: number, to: number, end: number) => (Math.max(0, from) + Math.min(end, to)) / 2;
    const x = middle(left, right, document.documentElement.clientWidth);
    const over = document.elementFromPoint(x, middle(top, bottom, window.innerHeight));
    return {
      // What has no name is told by how it is written. A space that breaks no line sounds like any other.
      name:
        (element.getAttribute('aria-label') ?? said ?? '').replace(/\s+/g, ' ').trim() ||
        element.outerHTML.slice(0, 120),
      lost: false,
      ring: ringOf(element) || ringOf(shown),
      under:
        over !== null && (shown.contains(over) || over.contains(shown))
          ? null
          : `${over?.outerHTML.slice(0, 160) ?? 'nothing'} at ${Math.round(top)} to ${Math.round(bottom)}`,
    };
  });
}

/** How often a page that still moves is looked at again, a third of a second apart. */
const LOOKS = 10;

/** The same once the page has come to rest, where something still moves over it. */
async function stopAtRest(page: Page): Promise<Stop> {
  let stop = await stopNow(page);
  for (let looks = 0; looks < LOOKS && stop.under !== null; looks += 1) {
    await page.evaluate(() => new Promise((rest) => setTimeout(rest, 300)));
    stop = await stopNow(page);
  }
  return stop;
}

/** Where the focus is; it must be somewhere, be seen, and have a ring. */
export async function soundStop(page: Page): Promise<string> {
  return sound(await stopAtRest(page));
}

function sound(stop: Stop): string {
  expect(stop).toEqual({ name: stop.name, lost: false, ring: true, under: null });
  return stop.name;
}

/** More stops than any page has: whoever does not arrive by then is trapped. */
const FAR = 120;

/**
 * Goes on by Tab until a name fits; every stop on the way must be sound. After the last one the page lets go once, to
 * what the browser has around it, and Tab comes in again at the top.
 */
export async function tabTo(page: Page, name: string | RegExp): Promise<readonly string[]> {
  const passed: string[] = [];
  let round = false;
  for (let stops = 0; stops < FAR; stops += 1) {
    await page.keyboard.press('Tab');
    const stop = await stopAtRest(page);
    if (stop.lost && !round) {
      round = true;
      continue;
    }
    const at = sound(stop);
    passed.push(at);
    if (typeof name === 'string' ? at === name : name.test(at)) return passed;
  }
  throw new Error(`No way by Tab to ${String(name)}; passed ${passed.join(' | ')}`);
}

/** Goes to a place and presses it. */
export async function pressAt(page: Page, name: string | RegExp, key = 'Enter'): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

/** Goes to fields one after the other and types over what is in them. */
export async function typeInto(page: Page, texts: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(texts)) {
    await tabTo(page, new RegExp(`^${name}`));
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.insertText(text);
  }
}
