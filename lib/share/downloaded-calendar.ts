import { instantFromJson } from '@/lib/contract/event-from-json';
import { hoursProvenance } from '@/lib/hours/provenance';
import { expectOk } from '@/lib/result/result';
import type { CallVoice } from '@/lib/words/call';
import { calendarText } from './calendar';
import { livePlans } from './live-plans';
import { sharedSeries } from './night-requests';
import type { SharedNight } from './shared-night';

/** A night that has just been planned, as a calendar that stands still at the moment of sharing. */
export function downloadedCalendar(night: SharedNight, voice: CallVoice): string {
  const sharedAt = instantFromJson(night.sharedAt);
  const series = expectOk(sharedSeries(night));
  const machines = livePlans(night, { series, clock: sharedAt });
  return calendarText({
    name: night.event.name,
    machines: expectOk(machines),
    context: {
      clock: sharedAt,
      sharedAt,
      swapMinutes: night.event.swapMinutes,
      voice,
      hours: { from: 'link', because: 'file', told: hoursProvenance(series) },
    },
  });
}
