import type { Page } from '@playwright/test';

declare global {
  interface Window {
    stops: { readonly stop: string; readonly fault: string | null }[];
    lookAtStop: () => void;
  }
}

/** Before the page is opened: every stop is looked at when it is left, and so as it came to rest. */
export async function watchStops(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.stops = [];
    /** The parts of a target that can be pressed: a link that runs over two lines is two of them. */
    const partsOf = (shown: Element): readonly DOMRect[] =>
      [...shown.getClientRects()].filter(({ width, height }) => width > 1 && height > 1);
    const faultOf = (shown: Element): string | null => {
      const parts = partsOf(shown);
      if (parts.length === 0) return 'has no place';
      const { innerHeight: tall } = window;
      for (const { left, right, top, bottom } of parts) {
        const x = (left + right) / 2;
        const isTall = bottom - top > tall;
        if (!isTall && (top < -1 || bottom > tall + 1)) return 'is not whole on the screen';
        const middle = (Math.max(0, top) + Math.min(tall, bottom)) / 2;
        // What is taller than the screen cannot be whole; it must fill the middle.
        for (const y of isTall ? [middle] : [top + 2, middle, bottom - 2]) {
          const over = document.elementFromPoint(x, y);
          if (over === null || !shown.contains(over))
            return `is under ${over?.outerHTML.slice(0, 80) ?? 'nothing'} at ${Math.round(y - top)} of ${Math.round(bottom - top)}`;
        }
      }
      return null;
    };
    window.lookAtStop = () => {
      const at = document.activeElement;
      if (at === null || at === document.body) return;
      const shown = at.closest('label') ?? at;
      const stop =
        (at.getAttribute('aria-label') ?? at.textContent ?? '').trim().slice(0, 50) ||
        at.outerHTML.slice(0, 90);
      window.stops.push({ stop, fault: faultOf(shown) });
    };
    document.addEventListener(
      'keydown',
      ({ key }) => {
        if (key === 'Tab') window.lookAtStop();
      },
      true,
    );
  });
}

/** More than there are stops, so that Tab comes round; of a group of radio buttons one is a stop. */
function stopsAhead(page: Page): Promise<number> {
  return page.evaluate(() => {
    const within = [...document.querySelectorAll('dialog:modal')].at(-1) ?? document;
    const found = [
      ...within.querySelectorAll<HTMLElement>(
        'a[href], button:not(:disabled), input:not(:disabled, [type=radio]), [type=radio]:checked, select, summary, textarea, [tabindex="0"]',
      ),
    ];
    return found.filter((each) => each.checkVisibility()).length + 2;
  });
}

/** Goes through a page, or the dialog before it, by Tab: how many stops there are, and what covers which. */
export async function coveredStops(
  page: Page,
): Promise<{ readonly stops: number; readonly faults: readonly string[] }> {
  const ahead = await stopsAhead(page);
  // Where the focus is so far the screen was another one.
  await page.keyboard.press('Tab');
  await page.evaluate(() => {
    window.stops = [];
  });
  for (let stop = 0; stop < ahead; stop += 1) await page.keyboard.press('Tab');
  return page.evaluate(() => {
    window.lookAtStop();
    const faults = window.stops.flatMap(({ stop, fault }) => (fault === null ? [] : [`${stop}: ${fault}`]));
    return { stops: window.stops.length, faults: [...new Set(faults)] };
  });
}
