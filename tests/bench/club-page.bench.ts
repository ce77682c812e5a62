import type { Page } from '@playwright/test';
import { startBuiltApp } from './built-app';
import { ms, tell, times } from './outcome';
import { launchBrowser, newPhone, tasksDuring } from './phone';

/** The longest task a page may hold a finger up with, on a phone four times slower than this machine. */
const WANTED_MS = 50;
const SLOWED = 4;
const RACERS = 40;
/** Until a page has come to rest after loading. */
const SETTLED_MS = 3000;

/** Down to the end and back, a thumb's stroke at a time. */
function scroll(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const end = document.documentElement.scrollHeight;
    for (let y = 0; y < end; y += 60) {
      window.scrollTo(0, y);
      await new Promise(requestAnimationFrame);
    }
    for (let y = end; y > 0; y -= 120) {
      window.scrollTo(0, y);
      await new Promise(requestAnimationFrame);
    }
  });
}

function rosterText(): string {
  const lines = Array.from({ length: RACERS }, (_, i) => {
    const box = `390x3 400x3 410x3 420x3${i % 4 === 0 ? '' : ' 430x3 440x3'}`;
    return `Racer ${i + 1};${['Open', 'Stock', ''][i % 3]};${400 + 10 * (i % 3)}x3;${box};${5 + (i % 20)} F;1300 ft`;
  });
  return ['Racer;Class;Mains;Box;Temperature;Elevation', ...lines].join('\n');
}

/** A club of forty on a night of twelve rounds, entered as a tech enters it. */
async function enterClub(page: Page): Promise<void> {
  await page.goto(`${app.url}/club`);
  await page.getByRole('link', { name: 'Start a club night' }).click();
  const form = page.locator('dialog[open]');
  await form.getByLabel('Name of the event').fill('Forty on the lake');
  await form.locator('[name="elevation"]').fill('1300 ft');
  await form.getByLabel('First at').fill('19:00');
  await form.getByLabel('Every', { exact: true }).fill('30');
  await form.getByLabel('How many', { exact: true }).fill('12');
  await form.getByLabel('Each lasting').fill('10');
  await form.getByRole('button', { name: 'Save event' }).click();
  // The phone's language has the twelve-hour clock.
  for (const [name, typed] of [
    [/6:00.pm/, '18 F'],
    [/11:00.pm/, '-6 F'],
    [/^1:00.am|^2:00.am/, '-9 F'],
  ] as const)
    await form.getByRole('textbox', { name }).first().fill(typed);
  await form.getByRole('button', { name: 'Save hours' }).click();
  await form.getByRole('textbox', { name: 'Table' }).fill(rosterText());
  await form.getByRole('button', { name: /^Add \d/ }).click();
  await page.getByRole('region', { name: 'Racers by the hour' }).waitFor();
}

const app = await startBuiltApp();
const browser = await launchBrowser();
try {
  const context = await newPhone(browser);
  const page = await context.newPage();
  // An hour before the first round; timers run on.
  await page.clock.setFixedTime('2027-01-17T00:00:00Z');
  await enterClub(page);
  const slow = await context.newCDPSession(page);
  await slow.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await page.reload();
  await page.getByRole('region', { name: 'Borrowing' }).waitFor();
  await page.waitForTimeout(SETTLED_MS);
  const { all: club } = await tasksDuring(browser, page, () => scroll(page));
  await page.goto(`${app.url}/about`);
  await page.waitForTimeout(SETTLED_MS);
  const { all: plain } = await tasksDuring(browser, page, () => scroll(page));
  const [longest = 0] = club;
  const [peer = 1] = plain;
  tell({
    what: `longest task while scrolling ${RACERS} racers, a phone ${SLOWED} times slower`,
    ours: `${ms(longest)} of processor`,
    peer: `/about, a page of words, ${ms(peer)}`,
    ratio: `${times(longest / peer)} as long`,
    wanted: { goal: `${WANTED_MS} ms or less`, met: longest <= WANTED_MS },
  });
} finally {
  await browser.close();
  await app.stop();
}
