import type { Hour } from '@/lib/hours/series';
import type { Pascal } from '@/lib/units/quantity';

/** An hour of one service at the site. Pressure is station pressure; null where the service gives none at all. */
export type SiteHour = Pick<
  Hour,
  'at' | 'temperature' | 'relativeHumidity' | 'pressureFrom' | 'spread' | 'sky'
> & { readonly pressure: Pascal | null };
