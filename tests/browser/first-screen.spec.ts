import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { NIGHT_STATES } from './night-states';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago' });
test.setTimeout(180_000);

/** Units and signs of measures stand beside their numbers and are read with them. */
const UNITS = ['in', 'inHg', 'hPa', 'ft', 'm', 'h', 'min', 'DA', '°F', '°C'];

/** What is on the screen, or on the whole page, in words; how small it is written; what is too small for a glove. */
function seen(page: Page, whole: boolean) {
  return page.evaluate(
    ([units, all]) => {
      const isShown = (element: Element) => {
        const { width, height } = element.getBoundingClientRect();
        return (
          element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
          width > 1 &&
          height > 1
        );
      };
      const within = (rect: DOMRect) =>
        all || (rect.top + rect.height / 2 < window.innerHeight && rect.bottom > 0);
      const words: string[] = [];
      const small: string[] = [];
      const walker = document.createTreeWalker(document.querySelector('main')!, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        const text = node.nodeValue?.trim() ?? '';
        const parent = node.parentElement;
        if (text === '' || parent === null || !isShown(parent)) continue;
        if (parent.closest('[class*="hidden"]') !== null || parent.closest('option') !== null) continue;
        if (Number.parseFloat(getComputedStyle(parent).fontSize) < 15) small.push(text);
        const range = document.createRange();
        range.selectNodeContents(node);
        // A text of several lines may go on below the screen.
        for (const each of text.matchAll(/\S+/g)) {
          const from = (node.nodeValue ?? '').indexOf(text) + each.index;
          range.setStart(node, from);
          range.setEnd(node, from + each[0].length);
          if (within(range.getBoundingClientRect())) words.push(each[0]);
        }
      }
      const targets = [
        ...document.querySelectorAll<HTMLElement>(
          'a[href], button, select, summary, textarea, input:not([type="radio"], [type="checkbox"]), label:has([type="radio"], [type="checkbox"])',
        ),
      ].filter(isShown);
      return {
        words: words.filter((word) => /[a-z]/i.test(word) && !units.includes(word.replace(/[.,:;]$/, ''))),
        small,
        narrow: targets.flatMap((target) => {
          const { width, height } = target.getBoundingClientRect();
          return Math.min(width, height) < 47.5
            ? [`${target.outerHTML.slice(0, 90)} ${width} x ${height}`]
            : [];
        }),
        acts: targets
          .filter(
            ({ tagName, textContent }) =>
              tagName === 'BUTTON' && /^Done: |^Yes, |^No, /.test(textContent ?? ''),
          )
          .map((button) => button.getBoundingClientRect().height),
      };
    },
    [UNITS, whole] as const,
  );
}

for (const state of NIGHT_STATES)
  test(`the first screen of "${state.name}" has few words, and everything is large enough, by day and by night`, async ({
    night,
  }) => {
    await night.clock.setFixedTime(instantOf(state.clock));
    await night.goto('/');
    await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
    if (state.path !== '/') await night.goto(state.path);
    for (const step of state.steps ?? []) {
      await step(night);
      await expect(night.locator('main :is(h1, h2)').first()).toBeVisible();
    }
    await night.waitForLoadState('networkidle');
    await night.evaluate(() => window.scrollTo(0, 0));
    for (const colorScheme of ['light', 'dark'] as const) {
      await night.emulateMedia({ colorScheme });
      const first = await seen(night, false);
      const page = await seen(night, true);
      console.log(
        state.name,
        first.words.length,
        page.words.length,
        JSON.stringify(first.words.join(' ')),
        JSON.stringify(page.narrow),
        JSON.stringify(page.small),
        page.acts.join(),
      );
    }
  });
