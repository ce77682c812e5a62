import { expect } from '@playwright/test';
import { PAGES } from '@/components/shell/pages';
import { test } from './engine';
import { shows } from './in-page';

/** What stands on each page once it is whole. */
const WORDS: Readonly<Record<string, string>> = {
  '/': 'Other jets',
  '/trail': 'Seasons',
  '/club': 'Club',
  '/machines': 'Duplicate',
  '/log': 'Run log',
  '/compare': 'Compare',
  '/open': 'Open',
  '/about': 'How it works',
};

test('every page opens and writes no error', async ({ engine }) => {
  for (const { href } of PAGES) {
    await engine.go(href);
    await shows(engine, WORDS[href] ?? 'a page without words in this test', href);
    // What fails late fails here: nothing else tells when a page has come to rest.
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(await engine.errors(), href).toEqual([]);
  }
});
