import type { Preferences } from '@/lib/store/records';
import type { NightRecords } from './night';

/** What the night page shows, as far as it is kept: the early answer of the next visit is worked out from it. */
export type ShownNight = { readonly records: NightRecords; readonly preferences: Preferences };

/** Where the night was posted to is nothing to an answer, and has secrets. */
export function shownNightJson({ records, preferences }: ShownNight): string {
  const { board: _, ...value } = records.event.value;
  return JSON.stringify({ records: { ...records, event: { ...records.event, value } }, preferences });
}

/** Of what `shownNightJson` of the same build has written. */
export const shownNightFromJson = (json: string): ShownNight => JSON.parse(json);
