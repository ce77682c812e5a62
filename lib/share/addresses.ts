import type { UnitChoice } from '@/lib/units/choice';

/** The page that opens a link; the night stands behind the #, which a browser sends to no server. */
export const OPEN_PAGE = '/open';

export function linkAddress(origin: string, payload: string): string {
  return `${origin}${OPEN_PAGE}#${payload}`;
}

/** Servers and what stands before them take addresses of 16 kB; eight racers fit. */
export const MOST_FEED_CHARACTERS = 12_000;

/** A calendar program asks this address again and again; the night travels with the question. */
export function calendarAddress(origin: string, payload: string, { temperature }: UnitChoice): string {
  return `${origin}/api/plan.ics?d=${payload}${temperature === 'F' ? '&units=us' : ''}`;
}

/** The same for a spreadsheet. */
export function tableAddress(origin: string, payload: string, { temperature }: UnitChoice): string {
  return `${origin}/api/plan.csv?d=${payload}${temperature === 'F' ? '&units=us' : ''}`;
}

/** The address that makes a phone offer to subscribe instead of to download. */
export function webcalAddress(address: string): string {
  return address.replace(/^https?:/, 'webcal:');
}

/** What a pasted link carries: all behind its #, or the text itself where it is only that. */
export function payloadOf(pasted: string): string {
  const text = pasted.replace(/\s+/g, '');
  const hash = text.indexOf('#');
  if (hash >= 0) return text.slice(hash + 1);
  return /[?&]d=([^&]*)/.exec(text)?.[1] ?? text;
}
