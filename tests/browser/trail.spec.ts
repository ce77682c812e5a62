import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { fromLocal } from '@/lib/time/local';
import { isoUtc, localDate } from '@/lib/time/zone';
import { instantOf, NOW } from './clock';
import { countingHand } from './counting-hand';
import { faultsInEveryLook, ON_DESK, overflows, test } from './watched-page';

const ZONE = 'America/Chicago';
const TOMORROW = localDate(instant(instantOf(NOW) + 24 * HOUR_MS), ZONE);

const fixture = (name: string) => readFileSync(`tests/fixtures/gpx/${name}.gpx`);

/** A day of half seconds: fifty thousand points up to a pass and down again, as a recorder writes them. */
function fiftyThousandPoints(): Buffer {
  const points = Array.from({ length: 50_000 }, (_, i) => {
    const height = (300 + 900 * Math.sin((i / 50_000) * Math.PI)).toFixed(1);
    const time = new Date(Date.UTC(2027, 0, 16, 15) + i * 500).toISOString();
    return `<trkpt lat="${(47 + i * 1e-5).toFixed(6)}" lon="-93.6"><ele>${height}</ele><time>${time}</time><extensions><v:heart xmlns:v="urn:v">90</v:heart></extensions></trkpt>`;
  });
  return Buffer.from(
    `<?xml version="1.0"?><gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Long day</name><trkseg>${points.join('')}</trkseg></trk></gpx>`,
  );
}

type Point = { readonly lat: number; readonly lon: number; readonly ele?: number; readonly at: string };

/** A GPX file of invented tracks. */
function gpxOf(...tracks: readonly (readonly Point[])[]): Buffer {
  const points = (track: readonly Point[]) =>
    track
      .map(({ lat, lon, ele, at }) => {
        const height = ele === undefined ? '' : `<ele>${ele}</ele>`;
        return `<trkpt lat="${lat}" lon="${lon}">${height}<time>${at}</time></trkpt>`;
      })
      .join('');
  const all = tracks.map((track) => `<trk><trkseg>${points(track)}</trkseg></trk>`).join('');
  return Buffer.from(
    `<?xml version="1.0"?><gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">${all}</gpx>`,
  );
}

/** That instant of tomorrow, where the track is: near enough for a forecast, whatever the clock of the tests. */
const tomorrowAt = (clock: string) => isoUtc(expectOk(fromLocal(TOMORROW, clock, ZONE)).at);

/** In the morning up to a pass, after lunch down to the other side: a recorder that was stopped writes two tracks. */
const TWO_TRACKS = gpxOf(
  [
    { lat: 47.4, lon: -93.6, ele: 400, at: tomorrowAt('08:00') },
    { lat: 47.6, lon: -93.6, ele: 1300, at: tomorrowAt('10:00') },
  ],
  [
    { lat: 47.6, lon: -93.6, ele: 1300, at: tomorrowAt('11:30') },
    { lat: 47.7, lon: -93.6, ele: 500, at: tomorrowAt('13:00') },
  ],
);

/** Southern winter, twelve hours ahead of UTC: 9 to 14 o'clock on the 11th there is the evening of the 10th in UTC. */
const QUEENSTOWN = gpxOf([
  { lat: -45.03, lon: 168.66, ele: 340, at: '2026-07-10T21:00:00Z' },
  { lat: -45.08, lon: 168.7, ele: 1600, at: '2026-07-10T23:30:00Z' },
  { lat: -45.03, lon: 168.66, ele: 340, at: '2026-07-11T02:00:00Z' },
]);

async function open(page: Page): Promise<void> {
  await page.goto('/trail');
  await expect(page.getByRole('button', { name: 'Print the card' })).toBeVisible();
}

async function choose(page: Page, name: string): Promise<void> {
  // The radio lies over its label and takes the click.
  await page.getByRole('radio', { name, exact: true }).check();
}

async function openTrack(page: Page): Promise<void> {
  await open(page);
  await page.getByText('Change the ride, its hours and its fuel').click();
  await choose(page, 'A GPX track');
}

const give = (page: Page, name: string, buffer: Buffer) =>
  page.getByLabel('GPX file').setInputFiles({ name, mimeType: 'application/gpx+xml', buffer });

test.describe('the trail page', () => {
  test('sets seasons, a dial, a ride and a card before anything is typed', ON_DESK, async ({ night }) => {
    await open(night);
    const seasons = night.getByRole('region', { name: 'Seasons side by side' });
    await expect(seasons.getByRole('row', { name: /^Pilot/ })).toContainText('47.5');
    await expect(seasons.getByText(/The screw’s range ends: put in pilot 47.5/)).toBeVisible();
    await expect(night.getByText(/Below −\d+.°F pilot 47.5 takes over/)).toBeVisible();
    await expect(night.getByText(/one setting for the whole ride, safe for its thickest air/)).toBeVisible();
    const card = night.getByRole('region', { name: 'The jet card' });
    await expect(card.getByRole('row', { name: /^−40.°F/ })).toBeVisible();
    expect(await overflows(night)).toBe(false);
  });

  test('keeps what was typed over a reload, and takes it back', async ({ night }) => {
    await open(night);
    await night.getByText('Change the days, or take them from past winters').click();
    const first = night.getByLabel('Temperature', { exact: true }).first();
    await first.fill('-5F');
    await expect(night.getByRole('columnheader', { name: /Spring.*−5/ })).toBeVisible();
    await night.reload();
    await expect(night.getByRole('columnheader', { name: /Spring.*−5/ })).toBeVisible();
    await night.getByText('Change the days, or take them from past winters').click();
    await night.getByRole('button', { name: 'Remove Midwinter' }).click();
    await expect(night.getByRole('columnheader', { name: /Midwinter/ })).toHaveCount(0);
    await night.getByRole('button', { name: 'Undo' }).first().click();
    await expect(night.getByRole('columnheader', { name: /Midwinter/ })).toBeVisible();
  });

  test('takes a day from past winters', async ({ night }) => {
    await open(night);
    await night.getByText('Change the days, or take them from past winters').click();
    await night.getByLabel('Town near the trail').fill('Pine Hollow');
    await night.getByRole('button', { name: 'Find the town' }).click();
    await night.getByRole('button', { name: 'Look up past winters' }).click();
    await night.getByRole('button', { name: 'Add January' }).click();
    await expect(night.getByRole('columnheader', { name: /January, cold/ })).toBeVisible();
    await expect(night.getByRole('row', { name: /^July/ })).toHaveCount(0);
  });

  test('rides a track of fifty thousand points', async ({ night }) => {
    await openTrack(night);
    await give(night, 'long-day.gpx', fiftyThousandPoints());
    await expect(night.getByText('50,000 points in 1 piece.')).toBeVisible({ timeout: 30_000 });
    await expect(night.getByText('It starts in the time zone America/Chicago.')).toBeVisible();
    await expect(night.getByLabel('Date', { exact: true })).toHaveValue('2027-01-16');
    await night.getByRole('textbox', { name: 'Starts at' }).fill('9:00');
    await expect(night.getByRole('rowheader', { name: /the start \(.*\) to the high point/ })).toBeVisible();
    await night.reload();
    await expect(night.getByRole('rowheader', { name: /the start \(.*\) to the high point/ })).toBeVisible();
  });

  test('joins two tracks of one day, and takes zone, day and hours from them', async ({ night }) => {
    await openTrack(night);
    await give(night, 'two.gpx', TWO_TRACKS);
    await expect(night.getByLabel('Track', { exact: true }).locator('option:checked')).toHaveText(
      `All 2 tracks of ${TOMORROW}`,
    );
    await expect(night.getByRole('combobox', { name: 'Time zone' })).toHaveValue(ZONE);
    await expect(night.getByLabel('Date', { exact: true })).toHaveValue(TOMORROW);
    await expect(night.getByRole('radio', { name: 'Forecast', exact: true })).toBeChecked();
    await expect(night.getByRole('rowheader', { name: /the start .* to the high point/ })).toContainText(
      '08:00',
    );
    await expect(night.getByRole('rowheader', { name: /the high point .* to the end/ })).toContainText(
      '13:00',
    );
  });

  test('plans a July day of Queenstown in its own clocks and by its own past winters', async ({ night }) => {
    await openTrack(night);
    await give(night, 'queenstown.gpx', QUEENSTOWN);
    await expect(night.getByRole('combobox', { name: 'Time zone' })).toHaveValue('Pacific/Auckland');
    await expect(night.getByLabel('Date', { exact: true })).toHaveValue('2026-07-11');
    await expect(night.getByRole('radio', { name: 'Past winters', exact: true })).toBeChecked();
    await expect(night.getByText(/^July at 1,115.ft in past years, 9 to 15 h: 8 hours in 10/)).toBeVisible();
    await expect(night.getByTestId('ride-call')).toContainText(/thickest air \(.* at 0?9:00\)/);
    await choose(night, 'Forecast');
    await expect(
      night.getByText(/A forecast reaches from yesterday to ten days ahead/).first(),
    ).toBeVisible();
  });

  test('takes the heights of the ground for a track that has none', async ({ night }) => {
    await openTrack(night);
    await give(night, 'no-elevation.gpx', fixture('no-elevation'));
    await expect(night.getByText(/The track has no heights: take those of the ground/).first()).toBeVisible();
    await night.getByRole('button', { name: 'Take the heights of the ground' }).click();
    await expect(night.getByText('It has no heights of its own: these are the ground’s')).toBeVisible();
    await expect(night.getByTestId('ride-call')).toBeVisible();
    await expect(night.getByRole('textbox', { name: 'Half way along' })).toHaveCount(0);
  });

  test('says in words why a file is no track, and asks for what a track lacks', async ({ night }) => {
    await openTrack(night);
    await give(night, 'bomb.gpx', fixture('entity-bomb'));
    await expect(night.getByText(/declares a document type/)).toBeVisible();
    await give(night, 'broken.gpx', fixture('malformed'));
    await expect(night.getByText(/damaged, or no GPX/)).toBeVisible();
    await give(night, 'large.gpx', Buffer.alloc(20 * 1024 * 1024 + 1, ' '));
    await expect(night.getByText(/larger than 20 MB/)).toBeVisible();
    await give(night, 'no-times.gpx', fixture('no-times'));
    await expect(night.getByText(/type when it starts and an average speed/).first()).toBeVisible();
    await night.getByRole('textbox', { name: 'Starts at' }).fill('9:00');
    await expect(night.getByRole('rowheader', { name: /the start \(.*\) to the high point/ })).toBeVisible();
    await give(night, 'no-elevation.gpx', fixture('no-elevation'));
    await expect(
      night.getByText(/type those of its start, half way along, and its end/).first(),
    ).toBeVisible();
    await night.getByRole('textbox', { name: 'Elevation of the start' }).fill('1000');
    await night.getByRole('textbox', { name: 'Half way along' }).fill('4500');
    await night.getByRole('textbox', { name: 'Of the end' }).fill('1500');
    await expect(night.getByText(/to the high point \(4,500.ft\)/).first()).toBeVisible();
  });

  test('lives through a time zone that is taken back letter by letter', async ({ night }) => {
    await open(night);
    await night.getByText('Change the ride, its hours and its fuel').click();
    const zone = night.getByRole('combobox', { name: 'Time zone' });
    await zone.fill('America/Denver');
    await expect(night.getByText(/Clock times of America\/Denver/)).toBeVisible();
    await zone.press('End');
    for (let i = 0; i < 4; i += 1) {
      await zone.press('Backspace');
      await expect(night.getByText(/No time zone is called “America\/D/).first()).toBeVisible();
    }
    await night.reload();
    await night.getByText('Change the ride, its hours and its fuel').click();
    await expect(night.getByText(/No time zone is called/).first()).toBeVisible();
    await zone.fill('oslo');
    await night.getByRole('option', { name: 'Europe/Oslo' }).click();
    await expect(night.getByText(/Clock times of Europe\/Oslo/)).toBeVisible();
    await expect(night.getByText(/Something in this page broke/)).toHaveCount(0);
  });

  test('takes a track away when the next file cannot be read, and brings it back', async ({ night }) => {
    await openTrack(night);
    await give(night, 'valley-pass.gpx', fixture('valley-pass'));
    await night.getByRole('textbox', { name: 'Starts at' }).fill('9:00');
    const call = night.getByTestId('ride-call');
    await expect(call).toBeVisible();
    await give(night, 'broken.gpx', fixture('malformed'));
    await expect(night.getByText(/track before it was taken away, with its answer/)).toBeVisible();
    await expect(call).toHaveCount(0);
    await night.getByRole('button', { name: 'Undo' }).first().click();
    await expect(call).toBeVisible();
  });

  test('asks for the forecast of the start', async ({ night }) => {
    await open(night);
    await night.getByText('Change the ride, its hours and its fuel').click();
    await night.getByLabel('Date', { exact: true }).fill(TOMORROW);
    await choose(night, 'Forecast');
    await expect(night.getByText(/Type the latitude and longitude of the start/).first()).toBeVisible();
    await night.getByRole('textbox', { name: 'Latitude of the start' }).fill('46.8, -92.1');
    await expect(night.getByText(/one setting for the whole ride, safe for its thickest air/)).toBeVisible();
    await expect(night.getByRole('link', { name: /Open-Meteo/ })).toBeVisible();
  });
});

test.describe('a rider who knows no jets', () => {
  test('comes from the first page to a printed card in twenty acts at most', ON_DESK, async ({ night }) => {
    await night.addInitScript(() => {
      window.print = () => document.body.setAttribute('data-printed', '');
    });
    await night.goto('/');
    const hand = countingHand();
    await hand.tap(night.getByRole('link', { name: 'I ride trails' }));
    await hand.tap(night.getByRole('button', { name: 'I only know it runs right at home' }));
    await expect(
      night.getByRole('img', { name: /Turned out it lets more fuel through: richer/ }),
    ).toBeVisible();
    await expect(
      night.getByRole('img', { name: /Turned out it lets more air through: leaner/ }),
    ).toBeVisible();
    await expect(
      night.getByRole('img', { name: /A clip lower down lifts the needle: richer/ }),
    ).toBeVisible();
    const form = night.getByRole('form', { name: 'My machine' });
    for (const [name, typed] of Object.entries({
      'Main jet': '360',
      Temperature: '30',
      Elevation: '2000',
      'Pilot jet': '45',
      'Turns out': '1.5',
      'Clip groove': '3',
    }))
      await hand.fill(form.getByRole('textbox', { name, exact: true }), typed);
    await hand.tap(form.getByRole('radio', { name: 'Air screw: out is leaner' }));
    expect(await overflows(night)).toBe(false);
    await hand.tap(form.getByRole('button', { name: 'Save machine' }));
    await hand.tap(night.getByRole('link', { name: 'Its jet card' }));
    const card = night.getByRole('region', { name: 'The jet card' });
    await expect(night.getByLabel('Machine', { exact: true })).toHaveText(/My machine/);
    await expect(card.getByText('Boxed: the baseline, 360.')).toBeVisible();
    await hand.tap(card.getByRole('button', { name: 'Print the card' }));
    await expect(night.locator('body[data-printed]')).toBeAttached();
    await expect(night.locator('[data-print-card]')).toContainText('My machine');
    expect(hand.acts()).toBeLessThanOrEqual(20);
  });

  test('gets the hours of his own track for it, and no word of the example', async ({ night }) => {
    await night.goto('/trail');
    await night.getByRole('link', { name: 'Add yours' }).click();
    await night.getByRole('button', { name: 'I only know it runs right at home' }).click();
    for (const [name, typed] of Object.entries({ 'Main jet': '360', Temperature: '30', Elevation: '2000' }))
      await night.getByRole('textbox', { name, exact: true }).fill(typed);
    await night.getByRole('button', { name: 'Save machine' }).click();
    await night.getByRole('link', { name: 'Its jet card' }).click();
    await openTrack(night);
    await expect(night.getByText('The machine is yours, this ride is not.')).toHaveCount(0);
    await expect(night.getByText('How cold will it be?')).toBeVisible();
    await give(night, 'two.gpx', TWO_TRACKS);
    await expect(night.getByTestId('ride-call')).toBeVisible();
    const ride = night.getByRole('region', { name: 'A ride: one setting for all of it' });
    await expect(ride.getByText(/example/)).toHaveCount(0);
    await expect(ride.getByRole('link', { name: /Open-Meteo/ })).toBeVisible();
  });

  test('has a form that a screen reader, the night and large text can use', async ({ night }) => {
    await night.goto('/machines?edit=home');
    await night.getByRole('button', { name: 'Save machine' }).waitFor();
    expect(await faultsInEveryLook(night)).toEqual([]);
  });
});

const CARDS = [
  { paper: 'a6-1', size: [148, 105], copies: 1 },
  { paper: 'a4-4', size: [297, 210], copies: 4 },
  { paper: 'letter-4', size: [279.4, 215.9], copies: 4 },
  { paper: 'a4-2', size: [210, 297], copies: 2 },
  { paper: 'letter-2', size: [215.9, 279.4], copies: 2 },
  { paper: 'a4-1', size: [297, 210], copies: 1 },
  { paper: 'letter-1', size: [279.4, 215.9], copies: 1 },
] as const;
/** The most that a card holds, and the line step in °F that makes it. */
const FULLEST = [
  { shows: 'Main', step: '6.9', lines: 14 },
  { shows: 'Main, screw and clip', step: '10', lines: 10 },
] as const;

test.describe('the printed card', () => {
  for (const { shows, step, lines } of FULLEST)
    test(`${shows}: every line of it whole on every paper, as often as there is room`, async ({ night }) => {
      await night.addInitScript(() => {
        window.print = () => undefined;
      });
      await open(night);
      await night.getByText('Change lines, columns and what stands in the cells').click();
      await choose(night, shows);
      await night.getByRole('textbox', { name: 'Warmest line' }).fill('50');
      await night.getByRole('textbox', { name: 'Coldest line' }).fill('-40');
      await night.getByRole('textbox', { name: 'A line every' }).fill(step);
      await night.getByRole('textbox', { name: 'A column every' }).fill('1500');
      const card = night.getByRole('region', { name: 'The jet card' });
      await expect(card.locator('tbody tr')).toHaveCount(lines);
      for (const { paper, size, copies } of CARDS) {
        await card.getByLabel('Paper').selectOption(paper);
        const sheet = night.locator(`[data-print-card="${paper}"]`);
        // Printing ends the sheet; a stand-in for the printer ends nothing, so it may stand still.
        await card.getByRole('button', { name: 'Print the card' }).click();
        await expect(sheet).toBeAttached();
        await expectWhole(night, paper, { lines, copies });
        // Where the notes are the back of each card there are twice as many sheets.
        const sheets = await sheet.locator('[data-sheet]').count();
        const shown = await sheet.locator('[data-page]').count();
        const pdf = (await night.pdf({ preferCSSPageSize: true })).toString('latin1');
        const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length;
        expect([copies, 2 * copies], paper).toContain(sheets);
        // No blank page, and none more than the sheets need: only figures that would be too small take two places.
        expect(pages, paper).toBe(shown);
        if (shows === 'Main') expect(pages, paper).toBe(Math.ceil(sheets / copies));
        const box = pdf
          .match(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/)!
          .slice(1)
          .map(Number);
        // Points of 1/72 inch; Chromium rounds paper to whole device pixels.
        expect(Math.abs(box[0]! - (size[0] / 25.4) * 72)).toBeLessThan(1.5);
        expect(Math.abs(box[1]! - (size[1] / 25.4) * 72)).toBeLessThan(1.5);
        await night.evaluate(() => window.dispatchEvent(new Event('afterprint')));
      }
    });

  test('has figures of 14 pt in the pocket, and nothing under 9 pt', async ({ night }) => {
    await night.addInitScript(() => {
      window.print = () => undefined;
    });
    await open(night);
    const card = night.getByRole('region', { name: 'The jet card' });
    for (const paper of ['letter-4', 'a4-4', 'a6-1']) {
      await card.getByLabel('Paper').selectOption(paper);
      await card.getByRole('button', { name: 'Print the card' }).click();
      const sizes = await night.locator(`[data-print-card="${paper}"]`).evaluate((element) => {
        const points = (each: Element) => Number.parseFloat(getComputedStyle(each).fontSize) * 0.75;
        return {
          figures: Math.min(...[...element.querySelectorAll('tbody td > span:first-child')].map(points)),
          least: Math.min(...[...element.querySelectorAll('p, th, td, span')].map(points)),
        };
      });
      expect(sizes.figures, paper).toBeGreaterThanOrEqual(14);
      expect(sizes.least, paper).toBeGreaterThanOrEqual(8.99);
      await night.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    }
  });
});

/** Nothing of any copy reaches over its sheet, and all lines of seven columns are on each. */
async function expectWhole(
  page: Page,
  paper: string,
  { lines, copies }: { readonly lines: number; readonly copies: number },
): Promise<void> {
  const found = await page.locator(`[data-print-card="${paper}"]`).evaluate((element) => {
    const sheets = [...element.querySelectorAll<HTMLElement>('[data-sheet]')];
    return {
      lines: element.querySelectorAll('tbody tr').length,
      cells: element.querySelectorAll('tbody td').length,
      over: sheets.filter(
        (sheet) => sheet.scrollHeight > sheet.clientHeight + 1 || sheet.scrollWidth > sheet.clientWidth + 1,
      ).length,
      clipped: [...element.querySelectorAll('td')].filter((td) => td.scrollWidth > td.clientWidth + 1).length,
    };
  });
  expect(found, paper).toEqual({ lines: lines * copies, cells: lines * 7 * copies, over: 0, clipped: 0 });
}
