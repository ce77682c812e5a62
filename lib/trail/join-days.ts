import { localDate } from '@/lib/time/zone';
import type { GpxTrack } from './track';

/** Tracks that were ridden on one day, as one. */
export type DayOfTracks = { readonly date: string; readonly track: GpxTrack; readonly count: number };

/**
 * The days on which a file holds more than one recorded track, each as one track in order of time: a recorder that was
 * stopped for lunch starts another. Tracks without times belong to no day, and planned routes were not ridden.
 */
export function joinedDays(tracks: readonly GpxTrack[], zone: string): readonly DayOfTracks[] {
  const days = new Map<string, GpxTrack[]>();
  for (const track of [...tracks].sort((a, b) => startOf(a) - startOf(b))) {
    const start = track.segments[0]?.[0]?.at ?? null;
    const timed = track.segments.flat().every(({ at }) => at !== null);
    if (start === null || !timed || track.route) continue;
    const date = localDate(start, zone);
    days.set(date, [...(days.get(date) ?? []), track]);
  }
  return [...days].flatMap(([date, each]) =>
    each.length < 2 ? [] : [{ date, count: each.length, track: joined(each) }],
  );
}

const startOf = ({ segments }: GpxTrack): number => segments[0]?.[0]?.at ?? Number.POSITIVE_INFINITY;

function joined(tracks: readonly GpxTrack[]): GpxTrack {
  return { name: '', segments: tracks.flatMap(({ segments }) => segments), route: false };
}
