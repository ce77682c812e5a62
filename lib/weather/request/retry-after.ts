import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';

/** A service may ask for silence, but not for ever: a mistyped header must not shut it out for a month. Judgement. */
const LONGEST_ASKED_MS = HOUR_MS;
const DEFAULT_MS = MINUTE_MS;

/**
 * Until when a service that answered 429 or 503 wants to be left alone: its Retry-After header (seconds or a date,
 * RFC 9110 section 10.2.3), or else the words of its answer. Open-Meteo sends no header; its counters restart on the
 * clock minute, the clock hour and the UTC day (open-meteo/open-meteo, RateLimiter.swift).
 */
export function quietUntil(header: string | null, body: string, now: Instant): Instant {
  const wanted = fromHeader(header, now) ?? fromWords(body, now) ?? now + DEFAULT_MS;
  return instant(Math.max(wanted, now));
}

function fromHeader(header: string | null, now: Instant): number | null {
  if (header === null) return null;
  const wanted = /^\d+$/.test(header.trim()) ? now + Number(header) * 1000 : Date.parse(header);
  return Number.isNaN(wanted) ? null : Math.min(wanted, now + LONGEST_ASKED_MS);
}

const NEXT = [
  { words: /minutely/i, every: MINUTE_MS },
  { words: /hourly/i, every: HOUR_MS },
  { words: /daily/i, every: 24 * HOUR_MS },
];

function fromWords(body: string, now: Instant): number | null {
  const said = NEXT.find(({ words }) => words.test(body));
  if (said !== undefined) return (Math.floor(now / said.every) + 1) * said.every;
  return /concurrent/i.test(body) ? now + 1000 : null;
}
