'use client';

import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { SHEET_NEEDS, type SheetNeed } from '@/lib/share/sheet-pages';
import type { SheetPaper } from '@/lib/share/sheet-paper';

/** Type is never larger than this against the least that can be read: a sheet is no poster. */
const LARGEST = 2.4;
/** Only where a sheet has the whole page already is its type made smaller; text stays at 9 pt, figures come down to it. */
const SMALLEST = 0.65;
const STEP = 0.05;

/** What sheets need, by their key; one that is not in it needs a cell. `apart`: its rest needs a sheet of its own. */
export type Fit = {
  readonly needs: ReadonlyMap<string, SheetNeed>;
  readonly apart: ReadonlySet<string>;
};

const START: Fit = { needs: new Map(), apart: new Set() };

/**
 * Sets the type of every `[data-sheet]` as large as its place allows, and finds those that need a larger place.
 * `contents` is anything that changes when the sheets do.
 */
export function useSheetFit<E extends HTMLElement>(
  paper: SheetPaper,
  contents: unknown,
): { readonly ref: RefObject<E | null>; readonly fit: Fit } {
  const ref = useRef<E>(null);
  const [found, setFound] = useState({ paper, contents, fit: START });
  const fresh = found.paper !== paper || found.contents !== contents;
  const fit = fresh ? START : found.fit;
  useLayoutEffect(() => {
    const sheets = [...(ref.current?.querySelectorAll<HTMLElement>('[data-sheet]') ?? [])];
    const large = sheets.filter((sheet) => !fitted(sheet));
    if (large.length > 0 || fresh) setFound({ paper, contents, fit: grown(fit, large) });
  }, [paper, contents, fit, fresh]);
  return { ref, fit };
}

function grown({ needs, apart }: Fit, large: readonly HTMLElement[]): Fit {
  const [more, parted] = [new Map(needs), new Set(apart)];
  for (const sheet of large) {
    const key = sheet.dataset.sheetKey ?? '';
    if (hasRest(sheet)) parted.add(key);
    // One that has the whole page by chance has been larger than it needs already.
    else more.set(key, hasPage(sheet) ? 'more' : next(needs.get(key) ?? 'cell'));
  }
  return { needs: more, apart: parted };
}

const next = (need: SheetNeed): SheetNeed => SHEET_NEEDS[SHEET_NEEDS.indexOf(need) + 1] ?? 'more';

const hasPage = (sheet: HTMLElement): boolean => sheet.dataset.place === 'page';
const hasRest = (sheet: HTMLElement): boolean => sheet.dataset.rest === 'below';

/** Makes the type as large as possible; false where even the least does not fit. */
function fitted(sheet: HTMLElement): boolean {
  if (sheet.dataset.place === 'more') {
    // Longer than a page it may be, wider it must not be.
    setScale(sheet, 1);
    if (sheet.scrollWidth > sheet.clientWidth) setScale(sheet, SMALLEST);
    return true;
  }
  let [low, high] = [hasPage(sheet) && !hasRest(sheet) ? SMALLEST : 1, LARGEST];
  if (!fits(sheet, low)) return false;
  while (high - low > STEP) {
    const middle = (low + high) / 2;
    if (fits(sheet, middle)) low = middle;
    else high = middle;
  }
  setScale(sheet, low);
  return true;
}

/** Rows that share what is left of a sheet are rounded to pixels, and may together be one pixel longer than it. */
const ROUNDING = 1;

function fits(sheet: HTMLElement, scale: number): boolean {
  setScale(sheet, scale);
  return (
    sheet.scrollHeight <= sheet.clientHeight + ROUNDING && sheet.scrollWidth <= sheet.clientWidth + ROUNDING
  );
}

function setScale(sheet: HTMLElement, scale: number): void {
  sheet.style.setProperty('--scale', scale.toFixed(3));
}
