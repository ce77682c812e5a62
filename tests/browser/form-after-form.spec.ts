import { expect, type Page } from '@playwright/test';
import { clubNightOf } from './club-hand';
import { test } from './watched-page';

/** Shuts the form that is open and presses what opens the next, before the browser has said that the first is shut. */
const shutAndOpen = (page: Page, opener: string) =>
  page.evaluate((name) => {
    document.querySelector<HTMLDialogElement>('dialog[open]')!.close();
    const openers = [...document.querySelectorAll<HTMLElement>('a, button')];
    openers.find((each) => (each.getAttribute('aria-label') ?? each.textContent) === name)!.click();
  }, opener);

const shown = (page: Page) => page.locator('dialog[open]');

async function staysOpen(page: Page, name: string): Promise<void> {
  const form = page.getByRole('dialog', { name, exact: true });
  await expect(form).toBeVisible();
  await page.evaluate(() => new Promise((later) => setTimeout(later, 300)));
  await expect(form).toBeVisible();
}

test('a form that is opened as another shuts stays open', async ({ night }) => {
  await night.goto('/#set-up');
  await night.getByRole('link', { name: 'Change: Event' }).click();
  await staysOpen(night, 'Event');
  for (const [opener, title] of [
    ['Change: Hours', 'Hours'],
    ['Change: Machine', 'Machine'],
    ['Get the forecast', 'Forecast'],
    ['Change: Event', 'Event'],
  ] as const) {
    await shutAndOpen(night, opener);
    await staysOpen(night, title);
  }
  await night.keyboard.press('Escape');
  await expect(shown(night)).toHaveCount(0);
  await expect.poll(() => night.evaluate(() => location.hash)).toBe('#set-up');
});

test('a form is opened again as fast as it was shut, by the keyboard', async ({ night }) => {
  await night.goto('/#set-up');
  await night.getByRole('link', { name: 'Change: Hours' }).focus();
  for (let times = 0; times < 5; times += 1) {
    await night.keyboard.press('Enter');
    await expect(shown(night)).toHaveCount(1);
    // Both keys reach the page before it has drawn anything between them.
    await Promise.all([night.keyboard.press('Escape'), night.keyboard.press('Enter')]);
    await staysOpen(night, 'Hours');
    await night.keyboard.press('Escape');
    await expect(shown(night)).toHaveCount(0);
  }
});

test('so does one of the club', async ({ night }) => {
  await clubNightOf(night, 1);
  await night.getByRole('link', { name: 'Add racers' }).first().click();
  await staysOpen(night, 'Add racers');
  await shutAndOpen(night, 'Change: Event');
  await staysOpen(night, 'Event');
});
