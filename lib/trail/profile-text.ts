import { instant } from '@/lib/time/instant';
import { type Profile, simplified } from '@/lib/trail/track';
import { MOST_POINTS } from '@/lib/trail/track-ride';
import { metre } from '@/lib/units/quantity';

/** A profile as text to be kept in the draft: simplified, so that a day's ride takes some twenty kilobytes. */
export function profileToText(profile: Profile): string {
  const points = simplified(profile.points, MOST_POINTS).map(({ along, elevation, at }) => [
    Math.round(along),
    elevation === null ? null : Math.round(elevation * 10) / 10,
    at,
  ]);
  const spots = profile.spots.map(({ along, latitude, longitude }) => ({
    along: Math.round(along),
    latitude: Number(latitude.toFixed(4)),
    longitude: Number(longitude.toFixed(4)),
  }));
  return JSON.stringify({ ...profile, points, spots });
}

/** The profile that was kept; null where there is none, or it cannot be read any more. */
export function profileFromText(text: string): Profile | null {
  if (text === '') return null;
  try {
    const kept: unknown = JSON.parse(text);
    return isKept(kept) ? { ...kept, points: kept.points.map(pointOf) } : null;
  } catch {
    return null;
  }
}

type KeptPoint = readonly [number, number | null, number | null];
type Kept = Omit<Profile, 'points'> & { readonly points: readonly KeptPoint[] };

/** Written by `profileToText` in this browser; told from anything else by what the ride needs of it. */
function isKept(kept: unknown): kept is Kept {
  if (typeof kept !== 'object' || kept === null || !('points' in kept) || !('elevations' in kept))
    return false;
  const { points } = kept;
  const hasParts = ['timed', 'start', 'segments', 'pointsInFile', 'spots'].every((part) => part in kept);
  return hasParts && Array.isArray(points) && points.length > 1 && points.every(isPoint);
}

function isPoint(point: unknown): point is KeptPoint {
  return (
    Array.isArray(point) &&
    point.length === 3 &&
    Number.isFinite(point[0]) &&
    point.slice(1).every((value) => value === null || Number.isFinite(value))
  );
}

function pointOf([along, elevation, at]: KeptPoint): Profile['points'][number] {
  return {
    along: metre(along),
    elevation: elevation === null ? null : metre(elevation),
    at: at === null ? null : instant(at),
  };
}
