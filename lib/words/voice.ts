import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';

/** How sentences speak: on the clock of the event's zone, in the person's units. */
export type Voice = {
  readonly zone: ClockZone;
  readonly units: UnitChoice;
  /** Lets a sentence say "tonight" or "today" where that is true. */
  readonly now?: Instant;
};
