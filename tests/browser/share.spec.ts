import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { readCalendar } from '@/tests/support/calendar';
import { accessFaults, overflows, test } from './watched-page';

// Before the first round.
test.use({ now: '18:15' });

const linkField = (page: Page) => page.getByRole('textbox', { name: 'Link to this night' });

/** Opens the share section of the demo night and hands back the link in it. */
async function shareDemo(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Share this night' }).click();
  await expect(linkField(page)).toHaveValue(/\/open#1[\w-]+$/);
  return linkField(page).inputValue();
}

/** Everything the browser's database holds, as text. */
function stored(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const names = (await indexedDB.databases()).map(({ name }) => name ?? '');
    const all: unknown[] = [];
    for (const name of names) {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open(name);
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
      for (const table of database.objectStoreNames) {
        const rows = await new Promise((resolve) => {
          const request = database.transaction(table).objectStore(table).getAll();
          request.onsuccess = () => resolve(request.result);
        });
        all.push([name, table, rows]);
      }
      database.close();
    }
    return JSON.stringify(all);
  });
}

test.describe('sharing a night', () => {
  test('packs it into a link that an empty browser opens with the same call, and changes nothing there', async ({
    night,
    newContext,
  }) => {
    const link = await shareDemo(night);
    expect(link.length).toBeLessThan(2_000);
    const call = await night.getByRole('region', { name: 'The call' }).textContent();
    const other = await (await newContext()).newPage();
    await other.goto(link);
    await expect(other.getByRole('heading', { name: 'Night drags on Lake Orvana' })).toBeVisible();
    const sentence = /Put in [\d\s]+ between Round\s\d and Round\s\d \([\d: to]+\)/;
    expect(call ?? '').toMatch(sentence);
    await expect(other.locator('main')).toContainText(sentence.exec(call ?? '')![0]);
    expect(await stored(other)).not.toContain('Lake Orvana');
  });

  test('is kept beside what is there only when asked, and taken back as a whole', async ({ night }) => {
    const link = await shareDemo(night);
    const before = await stored(night);
    await night.goto(link);
    await night.getByRole('button', { name: 'Keep as my night' }).click();
    await expect(night.getByText('Kept as a night of yours.')).toBeVisible();
    const eventsOf = (text: string) => text.split('Night drags on Lake Orvana').length - 1;
    expect(eventsOf(await stored(night))).toBe(eventsOf(before) + 1);
    await night.getByRole('button', { name: 'Undo' }).click();
    await expect(night.getByRole('button', { name: 'Keep as my night' })).toBeVisible();
    expect(eventsOf(await stored(night))).toBe(eventsOf(before));
    await night.getByRole('button', { name: 'Keep as my night' }).click();
    // Whoever leaves before it is kept loses it.
    await expect(night.getByText('Kept as a night of yours.')).toBeVisible();
    await night.goto(link);
    await night.reload();
    await expect(night.getByText('This night is here already.')).toBeVisible();
    await expect(night.getByRole('button', { name: 'Keep it a second time' })).toBeVisible();
    await night.goto('/');
    await expect(night.getByRole('region', { name: 'The call' })).toContainText('Put in');
    await expect(night.getByText('invented', { exact: true })).toHaveCount(0);
  });

  test('says of a damaged link what to do, and offers to open another or a file', async ({ night }) => {
    const link = await shareDemo(night);
    await night.goto(link.slice(0, -9));
    await expect(night.getByText('This link is damaged')).toBeVisible();
    await night.getByRole('textbox', { name: 'Link' }).fill(`  ${link}\n`);
    await night.getByRole('button', { name: 'Open the link' }).click();
    await expect(night.getByRole('button', { name: 'Keep as my night' })).toBeVisible();
  });

  test('writes files that open again: the night, its calendar, its table', async ({ night }) => {
    await shareDemo(night);
    await night.getByText('Files', { exact: true }).click();
    const fileOf = async (button: string): Promise<string> => {
      const download = night.waitForEvent('download');
      await night.getByRole('button', { name: button }).click();
      return (await download).path();
    };
    const { events } = readCalendar(readFileSync(await fileOf('Calendar (.ics)'), 'utf8'));
    expect(events.map(({ summary }) => summary)).toEqual([
      'Start on 410 400 410',
      expect.stringMatching(/^Put in [\d ]+ before Round \d$/),
    ]);
    expect(readFileSync(await fileOf('Table (.csv)'), 'utf8').split('\r\n').length).toBe(8 + 2);
    const file = await fileOf('Night (.json)');
    await night.goto('/open');
    await night.getByLabel('File with a night').setInputFiles(file);
    await expect(night.getByRole('heading', { name: 'Night drags on Lake Orvana' })).toBeVisible();
  });

  test('draws the code here, and gives the calendar an address that answers', async ({ night, request }) => {
    await shareDemo(night);
    await night.getByText('Code to scan', { exact: true }).click();
    await expect(night.getByRole('img', { name: 'Link to Night drags on Lake Orvana' })).toBeVisible();
    await night.getByText('Calendar and table that follow the forecast', { exact: true }).click();
    const address = await night.getByRole('textbox', { name: 'Calendar address' }).inputValue();
    const subscribe = night.getByRole('link', { name: 'Subscribe on this device' });
    await expect(subscribe).toHaveAttribute('href', address.replace('http:', 'webcal:'));
    const answer = await request.get(address);
    expect([answer.status(), answer.headers()['content-type']]).toEqual([
      200,
      'text/calendar; charset=utf-8',
    ]);
    expect(readCalendar(await answer.text()).name).toBe('Night drags on Lake Orvana');
    expect(await accessFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });
});
