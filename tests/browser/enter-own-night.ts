import { expect, type Page } from '@playwright/test';
import type { Hand } from './counting-hand';

/** From the demo night to a night of one's own with three rounds from 20:00, getting colder from 18 to 2 °F. */
export async function enterOwnNight(hand: Hand, night: Page, box: string): Promise<void> {
  const form = night.locator('dialog[open]');
  const text = (name: string | RegExp) => form.getByRole('textbox', { name, exact: true }).first();
  await hand.tap(night.getByRole('link', { name: 'Start my own night' }).first());
  for (const [name, typed] of Object.entries({
    Name: 'Blue twin',
    'Main jet': '400',
    'Jets in the box': box,
    Temperature: '20',
    Elevation: '1300',
  }))
    await hand.fill(text(name), typed);
  await hand.tap(form.getByRole('button', { name: 'Save machine' }));
  for (const [name, typed] of Object.entries({
    'Name of the event': 'Saturday heats',
    Elevation: '1300',
    'First at': '20:00',
    Every: '60',
    'How many': '3',
    'Each lasting': '10',
  }))
    await hand.fill(text(name), typed);
  await hand.tap(form.getByRole('button', { name: 'Save event' }));
  await hand.fill(text(/19:00/), '18');
  await hand.fill(text(/23:00/), '2');
  await hand.tap(form.getByRole('button', { name: 'Save hours' }));
  // The form goes when the hours are kept; whoever leaves the page before loses them.
  await expect(form).toHaveCount(0);
}
