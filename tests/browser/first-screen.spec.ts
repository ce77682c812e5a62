import { expect, type Page } from '@playwright/test';
import { PAGES } from '@/components/shell/pages';
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

/** Jets that are in and reach out of their column, into the next or out of the page. */
function cutJets(page: Page) {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('section[aria-label="In now"] p > span')]
      .filter(({ textContent }) => /^[\d. ]+$/.test(textContent ?? ''))
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 1)
      .map(({ textContent }) => textContent),
  );
}

/** On the first screen beside numbers, and on the whole page without opening anything. */
const FIRST_WORDS = 45;
const PAGE_WORDS = 700;
/** States without a plan: the page says what is missing and where to give it. */
const NO_PLAN = ['no-hours', 'no-box'];

for (const state of NIGHT_STATES)
  test(`the first screen of "${state.name}" has few words, and everything is large enough, by day and by night`, async ({
    night,
  }) => {
    await night.clock.setFixedTime(instantOf(state.clock));
    await night.goto('/');
    await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
    if (state.path !== '/') await night.goto(state.path);
    for (const step of state.steps ?? []) await step(night);
    const planned = !NO_PLAN.includes(state.name);
    const there = planned
      ? night.getByRole('region', { name: 'In now', exact: true })
      : night.getByRole('heading', { name: 'No plan yet' });
    await expect(there).toBeVisible();
    // What stands below the answer is drawn after it.
    const whole = night.getByRole('heading', { name: 'Before you touch it' });
    if (planned && !state.name.startsWith('track')) await expect(whole).toBeAttached();
    await night.evaluate(async () => {
      await document.fonts.ready;
      window.scrollTo(0, 0);
    });
    for (const colorScheme of ['light', 'dark'] as const) {
      await night.emulateMedia({ colorScheme });
      const first = await seen(night, false);
      expect(first.words.length, first.words.join(' ')).toBeLessThanOrEqual(FIRST_WORDS);
      const page = await seen(night, true);
      expect(page.words.length).toBeLessThanOrEqual(PAGE_WORDS);
      expect(page.words.length).toBeGreaterThan(20);
      expect(page.small).toEqual([]);
      expect(page.narrow).toEqual([]);
      expect(await cutJets(night)).toEqual([]);
      const least = (await night.locator('[data-view="track"]').count()) > 0 ? 96 : 72;
      for (const height of page.acts) expect(height).toBeGreaterThanOrEqual(least);
    }
  });

test('every other page is called as the menu calls it, and everything on it is large enough', async ({
  night,
}) => {
  await night.clock.setFixedTime(instantOf('19:40'));
  await night.goto('/');
  await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
  for (const { href, label } of PAGES.filter(({ href }) => href !== '/')) {
    await night.goto(href);
    await expect(night.getByRole('heading', { level: 1, name: label, exact: true })).toBeVisible();
    await expect(night).toHaveTitle(`${label} · Heavy Air`);
    await night.waitForLoadState('networkidle');
    const { small, narrow } = await seen(night, true);
    expect(small, href).toEqual([]);
    expect(narrow, href).toEqual([]);
  }
});

test('on a phone lying on its side, and on a narrow one, the button is in sight', async ({ night }) => {
  await night.clock.setFixedTime(instantOf('20:05'));
  await night.goto('/');
  const done = night.getByRole('button', { name: /^Done: / });
  for (const [width, height] of [
    [740, 360],
    [280, 653],
    [360, 740],
  ] as const) {
    await night.setViewportSize({ width, height });
    await expect(done).toBeInViewport({ ratio: 1 });
    await expect(night.getByText('GOOD', { exact: true })).toBeInViewport({ ratio: 1 });
  }
});

test('names from elsewhere are written in the face of the page', async ({ night }) => {
  await night.goto('/about');
  const heading = night.getByRole('heading', { level: 1 });
  await heading.evaluate((element) => {
    element.textContent = 'Jürgen Größ, André Ångström, Øystein, Łukasz Żuk, Čeněk, Ștefan, Ñuño';
  });
  const session = await night.context().newCDPSession(night);
  await session.send('DOM.enable');
  await session.send('CSS.enable');
  const { root } = await session.send('DOM.getDocument');
  const { nodeId } = await session.send('DOM.querySelector', { nodeId: root.nodeId, selector: 'h1' });
  const bare = async () => {
    const { fonts } = await session.send('CSS.getPlatformFontsForNode', { nodeId });
    return fonts.filter(({ isCustomFont }) => !isCustomFont).map(({ familyName }) => familyName);
  };
  await expect.poll(bare).toEqual([]);
});
