import type { PressureKind } from '@/lib/air/air';
import type { Sky } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import type { Kelvin, KelvinDifference, Pascal, Ratio } from '@/lib/units/quantity';

/** An hour of one service at the site. Pressure is station pressure; null where the service gives none at all. */
export type SiteHour = {
  readonly at: Instant;
  readonly temperature: Kelvin;
  readonly relativeHumidity: Ratio;
  readonly pressure: Pascal | null;
  readonly pressureFrom: PressureKind;
  readonly spread: KelvinDifference | null;
  readonly sky?: Sky;
};
