'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import { mmToPx, type Paper } from './paper';

export type Fit = {
  /** Names of the sheets that take more than one page, as their `data-sheet` says. */
  readonly long: readonly string[];
  /** Something is wider than the paper and would be cut. */
  readonly wide: boolean;
};

const FITS: Fit = { long: [], wide: false };

/** Measures what is shown as it will be printed; `contents` is anything that changes when it does. */
export function useFit<E extends HTMLElement>(
  paper: Paper,
  contents: unknown,
): { readonly ref: RefObject<E | null>; readonly fit: Fit } {
  const ref = useRef<E>(null);
  const [fit, setFit] = useState<Fit>(FITS);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is measured changes with the contents
  useEffect(() => {
    const sheets = [...(ref.current?.querySelectorAll<HTMLElement>('[data-sheet]') ?? [])];
    const most = mmToPx(paper.heightMm);
    // Half a pixel is rounding, not text.
    const long = sheets.filter((sheet) => sheet.scrollHeight > most + 0.5);
    setFit({
      long: paper.what === 'sheets' ? long.map((sheet) => sheet.dataset.sheet ?? '') : [],
      wide: sheets.some((sheet) => sheet.scrollWidth > sheet.clientWidth + 1),
    });
  }, [paper, contents]);
  return { ref, fit };
}
