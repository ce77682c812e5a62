'use client';

import { useEffect } from 'react';
import { useStoreHealth } from '@/components/store/store-provider';
import { whenAtRest } from '@/components/ui/when-at-rest';
import type { NightRecords } from '@/lib/night/night';
import { shownNightJson } from '@/lib/night/shown-night';
import { copyNight } from '@/lib/store/night-copy';
import type { Preferences } from '@/lib/store/records';
import { isKept } from '@/lib/store/shown-ahead';

/** Keeps what is shown for the early answer of the next visit, once the page has nothing else to do. */
export function useNightCopy(records: NightRecords, preferences: Preferences): void {
  const onDisk = useStoreHealth()?.keeps === 'disk';
  useEffect(() => {
    if (!onDisk || !isKept(records.event)) return undefined;
    return whenAtRest(() => {
      // A page in the background may not have heard yet of what was just written on the one before it.
      if (document.visibilityState === 'visible') copyNight(shownNightJson({ records, preferences }));
    });
  }, [onDisk, records, preferences]);
}
