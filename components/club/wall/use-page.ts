'use client';

import { useEffect, useState } from 'react';

/** Long enough to find a name among thirty and read what goes in. */
const PAGE_MS = 12_000;

export type PageTurning = {
  readonly page: number;
  readonly held: boolean;
  readonly next: () => void;
  readonly hold: (held: boolean) => void;
};

/** Which of so many pages is shown: the next one every twelve seconds, unless a person holds it. */
export function usePage(count: number): PageTurning {
  const [turns, setTurns] = useState(0);
  const [held, hold] = useState(false);
  const still = held || count < 2;
  useEffect(() => {
    if (still) return;
    const timer = setTimeout(() => setTurns(turns + 1), PAGE_MS);
    return () => clearTimeout(timer);
  }, [still, turns]);
  return { page: count === 0 ? 0 : turns % count, held, next: () => setTurns(turns + 1), hold };
}
