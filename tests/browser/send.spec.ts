import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { linkAddress } from '@/lib/share/addresses';
import { joinedParts, partsOf, readLinkPart } from '@/lib/share/link-parts';
import { clubNightOf } from './club-hand';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

const sending = (page: Page) => page.getByRole('region', { name: 'Send and say' });

async function opened(page: Page): Promise<string> {
  await sending(page).getByRole('button', { name: 'Send the briefing' }).click();
  const field = sending(page).getByRole('textbox', { name: 'Link to the briefing' });
  await expect(field).toHaveValue(/#c1/);
  return field.inputValue();
}

test('a whole briefing is one link, behind which a racer picks a name', async ({
  night,
  context,
  baseURL,
}) => {
  test.setTimeout(180_000);
  const names = await clubNightOf(night, 6);
  const link = await opened(night);
  // This page is open as 127.0.0.1 on a server that nobody else hears: that is said, not left to be found out.
  await expect(sending(night).getByText(/Only this computer can open this link/)).toBeVisible();
  await expect(sending(night).getByText(/^6 racers in [\d,]+ characters\./)).toBeVisible();
  const phone = await context.newPage();
  await phone.goto(link);
  for (const name of names) await expect(phone.getByRole('button', { name })).toBeVisible();
  await phone.getByRole('button', { name: names[3] }).click();
  await expect(phone.getByRole('heading', { name: names[3] })).toBeVisible();
  await expect(phone.getByText(/Baseline .* in the box/)).toBeVisible();
  await phone.getByRole('button', { name: 'Back to the names' }).click();
  await expect(phone.getByRole('button', { name: names[0] })).toBeVisible();
  // Over several codes: each says which are still missing, the last one opens the whole.
  const parts = partsOf(link.slice(link.indexOf('#') + 1), 300);
  expect(parts.length).toBeGreaterThan(1);
  expect(joinedParts(parts.map((part) => readLinkPart(part)!))).toBe(link.slice(link.indexOf('#') + 1));
  for (const [i, part] of [...parts].reverse().entries()) {
    const scanned = await context.newPage();
    await scanned.goto(linkAddress(baseURL ?? '', part));
    if (i < parts.length - 1)
      await expect(scanned.getByText(`${i + 1} of ${parts.length} codes are in.`)).toBeVisible();
    else await expect(scanned.getByRole('button', { name: names[5] })).toBeVisible();
    await scanned.close();
  }
});

test('the address of the network takes the place of this computer', async ({ night }) => {
  await night.route('**/api/addresses', (route) =>
    route.fulfill({
      json: { origins: ['http://192.168.1.20:3000', 'http://10.0.0.5:3000'], heardByOthers: true },
    }),
  );
  await clubNightOf(night, 1);
  const link = await opened(night);
  await expect(sending(night).getByText(/^The link leads to the address of this computer/)).toBeVisible();
  await expect(sending(night).getByText(/It is plain http/)).toBeVisible();
  const field = sending(night).getByRole('textbox', { name: 'Link to the briefing' });
  await expect(field).toHaveValue(/^http:\/\/192\.168\.1\.20:3000\/open#c1/);
  expect(link.includes('localhost')).toBe(false);
  await sending(night).getByLabel('Address on the network').selectOption('http://10.0.0.5:3000');
  await expect(field).toHaveValue(/^http:\/\/10\.0\.0\.5:3000\/open#c1/);
});

test('the briefing goes out as text, as an announcement and as a picture', async ({ night }) => {
  const names = await clubNightOf(night, 3);
  await opened(night);
  const text = await sending(night).getByRole('textbox', { name: 'The briefing as text' }).inputValue();
  for (const name of names) expect(text).toContain(name);
  expect(text).toMatch(/^(by )?\d\d:\d\d .*: Put in .* before Round \d\.$/m);
  const said = await sending(night).getByRole('textbox', { name: 'Announcement' }).inputValue();
  expect(said).toMatch(/^It is 18:15\. .*density altitude/);
  await sending(night)
    .getByLabel('Whose sheet')
    .selectOption(names[1] ?? '');
  const download = night.waitForEvent('download');
  await sending(night).getByRole('button', { name: 'Save the picture (.png)' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe(`${names[1]}.png`);
  const png = readFileSync(await file.path());
  // PNG (ISO/IEC 15948): signature, then the width and height of the IHDR chunk.
  expect(png.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
  expect([png.readUInt32BE(16), png.readUInt32BE(20) > 800]).toEqual([1080, true]);
  expect(png.length).toBeGreaterThan(10_000);
});
