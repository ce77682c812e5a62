import type { GpxProblem } from '@/lib/trail/gpx';
import type { Profile } from '@/lib/trail/track';
import { MOST_POINTS, type TrackProblem } from '@/lib/trail/track-ride';
import { formatNumber } from '@/lib/units/format';
import { counted } from './listing';

/** Why a file is no track, and what to do next. */
export function gpxProblemSentence(problem: GpxProblem): string {
  switch (problem.code) {
    case 'gpx-too-large':
      return `The file is larger than ${formatNumber(problem.mostBytes / 1024 / 1024)} MB. Export one day’s track by itself.`;
    case 'gpx-empty':
      return 'The file is empty. Export it again.';
    case 'gpx-has-doctype':
      return 'The file declares a document type, which no recorder does and which can hide harm. It was not opened. Export it again as GPX.';
    case 'gpx-too-deep':
      return 'The file is nested far deeper than any track. It was not opened. Export it again as GPX.';
    case 'gpx-too-many-points':
      return `The file has more than ${formatNumber(problem.most)} points. Export one day’s track by itself.`;
    case 'gpx-not-xml':
      return 'The file is damaged, or no GPX: its text breaks off or does not fit together. Export it again.';
    case 'not-gpx':
      return `The file is no GPX: it begins with "${problem.root}". Export the track as GPX.`;
    case 'gpx-without-track':
      return 'The file has no track or route with two points or more. Export the track, not only its waypoints.';
  }
}

/** Said behind it where a track stood there before: its answer must not stand for the file that was chosen last. */
export const TRACK_TAKEN_AWAY = 'The track before it was taken away, with its answer. Undo brings it back.';

export function trackProblemSentence(problem: TrackProblem): string {
  switch (problem.code) {
    case 'track-without-times':
      return 'The track has no times: type when it starts and an average speed, stops included.';
    case 'track-without-heights':
      return 'The track has no heights: take those of the ground below, or type those of its start, half way along, and its end.';
    case 'track-without-way':
      return 'All points of the track are in one place. Choose another file.';
  }
}

/** "All 3 tracks of 2027-01-16." */
export function joinedDayName(date: string, count: number): string {
  return `All ${count} tracks of ${date}`;
}

/** What is sent away when heights are asked for. */
export function askHeightsSentence(points: number): string {
  return `This track has no heights. Those of the ground can be had from the weather service: it is told ${counted(points, 'point')} of the way.`;
}

/** In whose clock times the ride is told; `zone` empty: that of the track is not known. */
export function trackZoneNote(zone: string, told: string): string {
  return zone === ''
    ? `The time zone of the track is not known: clock times are told in ${told}. Change it above where that is wrong.`
    : `It starts in the time zone ${zone}.${zone === told ? ' All clock times are told in it.' : ''}`;
}

/** What was taken from the file, and what was left out. */
export function trackNotes(profile: Profile, untimed: number): readonly string[] {
  const { pointsInFile, segments, backwards, elevations } = profile;
  const notes = [
    `${formatNumber(pointsInFile)} points in ${counted(segments, 'piece')}${segments > 1 ? '; the way between the pieces counts as ridden' : ''}.`,
  ];
  if (backwards > 0)
    notes.push(`${counted(backwards, 'point')} whose clock ran backwards ${wasWere(backwards)} left out.`);
  if (untimed > 0) notes.push(`${counted(untimed, 'point')} without a time ${wasWere(untimed)} left out.`);
  if (elevations === 'some') notes.push('Missing heights were filled straight from their neighbours.');
  if (elevations === 'asked')
    notes.push('It has no heights of its own: these are the ground’s, as asked for.');
  if (pointsInFile > MOST_POINTS)
    notes.push(`It is followed with at most ${MOST_POINTS} of them, its highest and lowest kept.`);
  return notes;
}

const wasWere = (count: number): string => (count === 1 ? 'was' : 'were');
