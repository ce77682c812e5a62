import type { ForecastState } from '@/components/weather/use-forecast';
import type { Briefing } from '@/lib/club/briefing';
import type { Club, ClubRecords } from '@/lib/night/club';
import type { Preferences } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';

/** What every view of the club's night is given; the briefing is null until it has been planned. */
export type ClubViewProps = {
  readonly records: ClubRecords;
  readonly club: Club;
  readonly now: Instant;
  readonly preferences: Preferences;
  readonly briefing: Briefing | null;
  readonly forecast: ForecastState;
};
