import type { LeftOut } from '@/lib/contract/contradiction';
import type { SourceName } from '@/lib/contract/source-name';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import type { Metre } from '@/lib/units/quantity';
import type { SiteHours } from './complete-hours';
import type { Site } from './place';
import { coordinate } from './request/address';

/** The last good answer of one service for one site, brought to the site. */
export type Copy = SiteHours & {
  readonly by: SourceName;
  /** Hours that contradict themselves or the others; they are among the missing. */
  readonly leftOut: readonly LeftOut[];
  /** Of the site. */
  readonly elevation: Metre;
  readonly elevationFrom: 'given' | 'service';
  readonly modelElevation: Metre | null;
  readonly issuedAt: Instant | null;
  readonly fetchedAt: Instant;
  readonly freshUntil: Instant;
  readonly lastModified: string | null;
};

export function siteKey({ latitude, longitude, elevation }: Site): string {
  return `${coordinate(latitude)},${coordinate(longitude)},${elevation ?? ''}`;
}

export function copyKey(by: SourceName, site: Site): string {
  return `${by} ${siteKey(site)}`;
}

const USUAL_FRESH_MS = 15 * MINUTE_MS;
/** A service whose clock or header is wrong must not keep an old forecast alive. */
const LONGEST_FRESH_MS = 2 * HOUR_MS;
/** Older than this a copy is no forecast for tonight any more. */
const USABLE_MS = 12 * HOUR_MS;

/** A quarter of an hour, or as long as the service says nothing new will come. */
export function freshUntil(now: Instant, expires: Instant | null): Instant {
  return instant(Math.min(Math.max(now + USUAL_FRESH_MS, expires ?? 0), now + LONGEST_FRESH_MS));
}

export function isUsable(copy: Copy, now: Instant): boolean {
  return now - copy.fetchedAt <= USABLE_MS;
}
