import type { Contradiction } from '@/lib/contract/contradiction';
import type { Instant } from '@/lib/time/instant';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import type { Expected } from './expected';
import { type Finding, NOTHING, whole } from './finding';
import { BEFORE_ISSUE_MS, CLOCKS_DIFFER_MS, LATEST_START_MS, OLDEST_ISSUE_MS } from './limits';

/** What is wrong with the time at which a forecast was made; null where nothing is, or where it does not say. */
export function issueProblem(issuedAt: Instant | null, now: Instant): Contradiction | null {
  if (issuedAt === null) return null;
  if (issuedAt - now > CLOCKS_DIFFER_MS) return 'future-issue';
  return now - issuedAt > OLDEST_ISSUE_MS ? 'old-issue' : null;
}

/** Was it made not long ago? */
export function checkIssue({ issuedAt }: ServiceAnswer, { now }: Expected): Finding {
  const code = now === null ? null : issueProblem(issuedAt, now);
  return code === null ? NOTHING : whole({ code });
}

/** Are its hours those that were asked for: none outside, and for a forecast from about now onwards? */
export function checkHours({ hours, issuedAt }: ServiceAnswer, expected: Expected): Finding {
  const { now, earliest, latest } = expected;
  const [first, last] = [hours[0], hours.at(-1)];
  if (first === undefined || last === undefined) return NOTHING;
  const outside = first.at < earliest || last.at > latest;
  const beforeIssue = issuedAt !== null && issuedAt - first.at > BEFORE_ISSUE_MS;
  const notNow = now !== null && (first.at - now > LATEST_START_MS || last.at < now);
  return outside || beforeIssue || notNow ? whole({ code: 'other-hours' }) : NOTHING;
}
