import { expect } from '@playwright/test';
import { test } from './engine';
import { shows, tapLater, textOf } from './in-page';

const FIRST_PAGES = ['/log', '/trail', '/open', '/', '/compare'];
/** From before the database is open until after everything has been read. */
const AFTER_MS = [0, 20, 50, 90];
const VISITS = 20;

test('pages that are left at once leave the database open to the next page', async ({ engine }) => {
  await engine.go('/');
  // The first screen is answered before the invented night is kept; what stands below it is not.
  await shows(engine, 'Before you touch it');
  for (let visit = 0; visit < VISITS; visit += 1) {
    await engine.go(FIRST_PAGES[visit % FIRST_PAGES.length] ?? '/');
    await engine.ask(tapLater, '/machines', AFTER_MS[visit % AFTER_MS.length] ?? 0);
    await shows(engine, 'Duplicate', '/machines');
    expect(await textOf(engine)).not.toContain('gone after a reload');
  }
});
