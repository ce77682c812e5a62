'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Paper } from './paper';

/** Whether anything shown is wider than its paper and would be cut; `contents` is anything that changes when it does. */
export function useWide<E extends HTMLElement>(
  paper: Paper,
  contents: unknown,
): { readonly ref: RefObject<E | null>; readonly wide: boolean } {
  const ref = useRef<E>(null);
  const [wide, setWide] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is measured changes with the contents
  useEffect(() => {
    const sheets = [...(ref.current?.querySelectorAll<HTMLElement>('[data-sheet]') ?? [])];
    setWide(sheets.some((sheet) => sheet.scrollWidth > sheet.clientWidth + 1));
  }, [paper, contents]);
  return { ref, wide };
}
