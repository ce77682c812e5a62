import { expect } from '@playwright/test';
import { ON_DESK, overflows, test } from './watched-page';

// Before the first round.
test.use({ now: '18:15' });

test.describe('half an hour before a swap', () => {
  test.use({ now: '19:40' });

  test('answers on the first screen, without scrolling', ON_DESK, async ({ night }) => {
    await night.goto('/');
    const plate = [
      night.getByRole('region', { name: 'In now', exact: true }),
      night.getByRole('region', { name: 'Next', exact: true }),
      night.getByRole('button', { name: 'Done: 420 410 420 is in' }),
      night.getByText(/Put in 420\s410\s420/).first(),
      night.getByText('invented', { exact: true }),
    ];
    for (const part of plate) await expect(part).toBeInViewport({ ratio: 1 });
    expect(await overflows(night)).toBe(false);
  });

  test('keeps what was fitted over a reload, and takes it back', async ({ night }) => {
    await night.goto('/');
    await night.getByRole('button', { name: 'Done: 420 410 420 is in' }).click();
    await expect(night.getByText('420 410 420 is in.')).toBeVisible();
    const fitted = night.getByRole('region', { name: 'In now', exact: true });
    await expect(fitted).toContainText('420 410 420');
    await night.reload();
    await expect(fitted).toContainText('420 410 420');
    await night.getByRole('button', { name: 'Other jets' }).click();
    await night.getByLabel('Main jet, carburettor 2').selectOption('430');
    await night.getByRole('button', { name: 'Done: it is in' }).click();
    await expect(fitted).toContainText('420 430 420');
    await night.getByRole('button', { name: 'Undo' }).click();
    await expect(fitted).toContainText('420 410 420');
  });

  test('shows only what gloves need at the track', async ({ night }) => {
    await night.goto('/');
    await night.getByRole('link', { name: 'At the track' }).click();
    await expect(night.getByRole('banner')).toBeHidden();
    const decide = night.getByRole('button', { name: 'Done: 420 410 420 is in' });
    expect((await decide.boundingBox())?.height).toBeGreaterThanOrEqual(96);
    for (const name of ['Other jets', 'Running late?', 'Knocked out'])
      expect((await night.getByRole('button', { name }).boundingBox())?.height).toBeGreaterThanOrEqual(64);
    await expect(night.getByRole('table')).toHaveCount(0);
    await night.goBack();
    await expect(night.getByRole('table').first()).toBeVisible();
  });
});

test.describe('the night page', () => {
  test('is written into the HTML as words only, before any script has run', async ({ request }) => {
    const html = await (await request.get('/')).text();
    const body = html.slice(html.indexOf('<body')).replace(/<script[\s\S]*?<\/script>/g, '');
    expect(body).toContain('Opening the night…');
    expect(body).toContain('needs JavaScript');
  });

  test('moves the rest of a night that is late', async ({ night }) => {
    await night.goto('/');
    await night.getByRole('button', { name: 'Running late?' }).click();
    await night.getByText('Another time').click();
    await night.getByRole('radio', { name: '45 later' }).check();
    await night.getByRole('button', { name: 'Move Round 1 to 19:45' }).click();
    await expect(night.getByRole('row', { name: /^Round 1/ })).toContainText('19:45 to 20:00');
    await night.getByRole('button', { name: 'Undo' }).click();
    await expect(night.getByRole('row', { name: /^Round 1/ })).toContainText('19:00 to 19:15');
  });

  test('shows the night theme again before the first paint of the next visit', ON_DESK, async ({ night }) => {
    await night.goto('/');
    await night.getByRole('button', { name: 'Display' }).click();
    await night.getByRole('radio', { name: 'Night' }).check();
    await night.getByRole('radio', { name: '°C' }).check();
    await expect(night.locator('html')).toHaveAttribute('data-theme', 'night');
    await night.keyboard.press('Escape');
    await expect(night.getByRole('row', { name: /^Round 1/ })).toContainText('°C');
    await night.reload({ waitUntil: 'commit' });
    await expect(night.locator('html')).toHaveAttribute('data-theme', 'night');
    await expect(night.getByRole('row', { name: /^Round 1/ })).toContainText('°C');
  });
});

test('a night opened in another zone keeps the clock of the track', async ({ newContext }) => {
  const page = await (await newContext({ timezoneId: 'Asia/Kolkata' })).newPage();
  await page.goto('/');
  await expect(page.getByRole('region', { name: 'In now', exact: true })).toBeVisible();
  await expect(page.getByRole('main')).toContainText('Night drags on Lake Orvana18:15');
});
