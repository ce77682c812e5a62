'use client';

import { useEffect } from 'react';

/** What says what a paper is of: what is marked as that, else the heading of the page. */
const TITLES = ['[data-sheet-title]', 'main h1'] as const;

/** Gives every sheet of a paper the title of its page: the margin's words are written by the style sheet, from this. */
export function SheetTitle() {
  useEffect(() => {
    const write = (): void => {
      const [title] = TITLES.flatMap((each) => document.querySelector(each) ?? []);
      const text = (title?.textContent ?? '').replace(/\s+/g, ' ').trim();
      const { style } = document.documentElement;
      if (text === '') style.removeProperty('--sheet-title');
      else style.setProperty('--sheet-title', `"${CSS.escape(text)}"`);
    };
    window.addEventListener('beforeprint', write);
    return () => window.removeEventListener('beforeprint', write);
  }, []);
  return null;
}
