'use client';

import { useEffect } from 'react';
import { useStoreHealth } from '@/components/store/store-provider';
import { whenAtRest } from '@/components/ui/when-at-rest';
import type { NightRecords } from '@/lib/night/night';
import { keepNight } from '@/lib/store/kept-night';
import type { Preferences } from '@/lib/store/records';
import { keptJson } from './kept-json';

/** Keeps what is shown for the early answer of the next visit, once the page has nothing else to do. */
export function useKeptNight(records: NightRecords, preferences: Preferences): void {
  const onDisk = useStoreHealth()?.keeps === 'disk';
  useEffect(() => {
    if (!onDisk) return undefined;
    return whenAtRest(() => keepNight(keptJson({ records, preferences })));
  }, [onDisk, records, preferences]);
}
