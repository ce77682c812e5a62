import { expect, type Page } from '@playwright/test';
import { FORMS } from './forms';
import { test } from './watched-page';

/** Every address with something to type into, and what is there once it can be typed into. */
const PLACES = [...FORMS, ['/open', 'Display']] as const;

/** Window in px and text in percent: 320 px is 400 % zoom of 1280 (WCAG 2.2, 1.4.10), 200 % text is 1.4.4. */
const LOOKS = [
  [390, 100],
  [390, 200],
  [360, 150],
  [320, 130],
  [320, 200],
] as const;

/** Inputs that show less than the value in them, or less than six figures of a longer one, in px: needed and there. */
function narrowInputs(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const pen = document.createElement('canvas').getContext('2d');
    if (pen === null) return ['no canvas'];
    const widthOf = (text: string, font: string): number => {
      pen.font = font;
      return pen.measureText(text).width;
    };
    return [...document.querySelectorAll('input')].flatMap((input) => {
      if (!['text', 'search', ''].includes(input.type) || input.offsetParent === null) return [];
      const style = getComputedStyle(input);
      const font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      const shown = input.value === '' ? input.placeholder : input.value;
      const needed = Math.min(widthOf(shown, font), widthOf('000000', font));
      const there =
        input.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight);
      const name = input.labels?.[0]?.textContent ?? input.getAttribute('aria-label') ?? input.id;
      return there + 0.5 < needed ? [`${name}: "${shown}" ${needed.toFixed(0)} > ${there.toFixed(0)}`] : [];
    });
  });
}

test('what is typed can be read in every field, up to twice the size of text', async ({ night }) => {
  test.setTimeout(180_000);
  await night.goto('/');
  await night.getByRole('region', { name: 'The call' }).waitFor();
  const faults: string[] = [];
  let fields = 0;
  for (const [path, act] of PLACES) {
    await night.goto(path);
    await night.getByRole('button', { name: act }).last().waitFor();
    fields += await night.locator('input').count();
    for (const [width, percent] of LOOKS) {
      await night.setViewportSize({ width, height: 740 });
      await night.evaluate((size) => {
        document.documentElement.style.fontSize = `${size}%`;
      }, percent);
      faults.push(
        ...(await narrowInputs(night)).map((fault) => `${path} ${width} px ${percent} %: ${fault}`),
      );
    }
  }
  expect(faults).toEqual([]);
  expect(fields).toBeGreaterThan(60);
});
