import type { NightRecords } from '@/lib/night/night';
import type { Preferences } from '@/lib/store/records';

/** What the early answer of the next visit is worked out from. */
export type Kept = { readonly records: NightRecords; readonly preferences: Preferences };

/** Where the night was posted to is nothing to the answer, and has secrets. */
export function keptJson({ records, preferences }: Kept): string {
  const { board: _, ...value } = records.event.value;
  return JSON.stringify({ records: { ...records, event: { ...records.event, value } }, preferences });
}

export const keptFromJson = (json: string): Kept => JSON.parse(json);
