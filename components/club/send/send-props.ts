import type { Briefing } from '@/lib/club/briefing';
import type { Club, ClubRecords } from '@/lib/night/club';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import type { ClubNames } from '@/lib/words/club';

/** What sending and saying the briefing needs. */
export type SendProps = {
  readonly records: ClubRecords;
  readonly club: Club;
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly now: Instant;
  readonly units: UnitChoice;
};
