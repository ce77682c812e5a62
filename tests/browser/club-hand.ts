import type { Page } from '@playwright/test';
import { countingHand } from './counting-hand';

/** A hand in the club's forms, by the names of what it meets. */
export function clubHand(page: Page) {
  const hand = countingHand();
  const form = page.locator('dialog[open]');
  return {
    acts: hand.acts,
    follow: (name: string) => hand.tap(page.getByRole('link', { name, exact: true }).first()),
    press: (name: string | RegExp) => hand.tap(form.getByRole('button', { name })),
    fill: (name: string | RegExp, text: string) =>
      hand.fill(form.getByRole('textbox', { name }).first(), text),
  };
}

export type Hand = ReturnType<typeof clubHand>;

export async function enterEvent(hand: Hand, { runs = '5', every = '60' } = {}): Promise<void> {
  await hand.follow('Start a club night');
  await hand.fill('Name of the event', 'Saturday on the lake');
  await hand.fill(/^Elevation/, '1300 ft');
  await hand.fill('First at', '19:00');
  await hand.fill('Every', every);
  await hand.fill('How many', runs);
  await hand.fill('Each lasting', '10');
  await hand.press('Save event');
}

export async function enterHours(hand: Hand): Promise<void> {
  await hand.fill(/18:00/, '18');
  await hand.fill(/23:00/, '-6');
  await hand.fill(/03:00|02:00|01:00|00:00/, '-8');
  await hand.press('Save hours');
}

const FIRST = [
  'Ilsa',
  'Juri',
  'Oda',
  'Bertrand',
  'Maximiliane',
  'Tor',
  'Anneke',
  'Wilhelmina',
  'Pia',
  'Knut',
];
const LAST = [
  'Vorn',
  'Tavel',
  'Rask',
  'Quistgaard-Hollenbach',
  'Ost',
  'Lindqvister',
  'Brannock',
  'de la Fontenelle',
];

/** So many invented racers with names of all lengths; every third has three carburettors with jets of their own. */
export function rosterOf(count: number): { readonly names: readonly string[]; readonly table: string } {
  const names = Array.from({ length: count }, (_, i) => {
    const round = Math.floor(i / 40);
    return `${FIRST[i % 10]} ${LAST[(i + Math.floor(i / 10)) % 8]}${round === 0 ? '' : ` ${'I'.repeat(round + 1)}`}`;
  });
  const kinds = [
    'Open;410/400/410;390x3 400x3 410x3 420x3 430x3 440x3;13;1320 ft',
    'Stock;162.5x2;160x2 162.5x2 165x2 167.5x2 170x2 172.5x2;18;1320 ft',
    ';400x3;390x3 400x3 410x3 420x3 430x3;22;900 ft',
  ];
  const rows = names.map((name, i) => `${name};${kinds[i % 3]}`);
  return { names, table: ['Racer;Class;Mains;Box;Temp (F);Elevation', ...rows].join('\n') };
}

/** A club night from nothing with so many racers; ready when its briefing stands. */
export async function clubNightOf(
  page: Page,
  count: number,
  event: Parameters<typeof enterEvent>[1] = {},
): Promise<readonly string[]> {
  await page.goto('/club');
  const hand = clubHand(page);
  await enterEvent(hand, event);
  await enterHours(hand);
  const { names, table } = rosterOf(count);
  await hand.fill('Table', table);
  await hand.press(count === 1 ? 'Add 1 racer' : `Add ${count} racers`);
  await page.getByRole('region', { name: 'Racers by the hour' }).waitFor({ timeout: 45_000 });
  return names;
}
