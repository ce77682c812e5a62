import { useRef, useState } from 'react';
import type { Part } from '@/components/draft/part';
import { deviceZone } from '@/components/event/zones';
import { Field } from '@/components/ui/field';
import fieldStyles from '@/components/ui/field.module.css';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import type { FieldErrors } from '@/lib/fields/field-reader';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import { instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import { forecastReaches } from '@/lib/trail/forecast-reach';
import type { GpxTracks } from '@/lib/trail/gpx';
import { MOST_GPX_BYTES } from '@/lib/trail/gpx-shape';
import { joinedDays } from '@/lib/trail/join-days';
import { profileFromText, profileToText } from '@/lib/trail/profile-text';
import { type Profile, profileOf } from '@/lib/trail/track';
import type { UnitChoice } from '@/lib/units/choice';
import {
  gpxProblemSentence,
  joinedDayName,
  TRACK_TAKEN_AWAY,
  trackNotes,
  trackZoneNote,
} from '@/lib/words/gpx-problems';
import { exampleParts } from './example-ride';

type ZoneAt = typeof import('@/lib/time/zone-at').zoneAt;

/** What a file was read to, and the zone of a point. */
type ReadFile = GpxTracks & { readonly zoneAt: ZoneAt };

/** Whole days first, since a day is what is planned; then each track by itself. */
function withJoinedDays({ tracks, untimed }: GpxTracks, zoneAt: ZoneAt): ReadFile {
  const start = tracks[0]?.segments[0]?.[0];
  const zone = (start === undefined ? null : zoneAt(start)) ?? deviceZone();
  const days = joinedDays(tracks, zone).map(({ date, track, count }) => ({
    ...track,
    name: joinedDayName(date, count),
  }));
  return { tracks: [...days, ...tracks], untimed, zoneAt };
}

/** Reads a file's track in this browser; the file goes nowhere. What reads it is loaded when it is first needed. */
async function tracksOf(file: File): Promise<ReadFile | string> {
  if (file.size > MOST_GPX_BYTES)
    return gpxProblemSentence({ code: 'gpx-too-large', mostBytes: MOST_GPX_BYTES });
  try {
    const [{ readGpx }, { zoneAt }, text] = await Promise.all([
      import('@/lib/trail/gpx'),
      import('@/lib/time/zone-at'),
      file.text(),
    ]);
    const read = readGpx(text, (xml) => new DOMParser().parseFromString(xml, 'application/xml'));
    return read.ok ? withJoinedDays(read.value, zoneAt) : gpxProblemSentence(read.reason);
  } catch {
    return 'The file could not be read. Choose it again.';
  }
}

type GpxFieldProps = {
  readonly ride: Part<RideDraft>;
  readonly errors: FieldErrors;
  readonly units: UnitChoice;
};

type StartTexts = Pick<RideDraft, 'latitude' | 'longitude'>;

function startTexts({ start }: Profile): StartTexts {
  return { latitude: start.latitude.toFixed(4), longitude: start.longitude.toFixed(4) };
}

/** Coordinates that came from a track go with it; typed ones stay. */
function withoutStart({ latitude, longitude }: StartTexts, gone: Profile): Partial<StartTexts> {
  const its = startTexts(gone);
  return its.latitude === latitude && its.longitude === longitude ? { latitude: '', longitude: '' } : {};
}

/** The clocks and the day that a track brings along; where it has no times the day stays. */
function dayOf(profile: Profile, zoneAt: ZoneAt) {
  const zone = zoneAt(profile.start);
  const timezone = zone ?? deviceZone();
  const first = profile.points[0]?.at ?? null;
  return {
    timezone,
    trackZone: zone ?? '',
    ...(first === null ? {} : { date: localDate(first, timezone) }),
  };
}

/**
 * Temperatures of the example are nobody's: its own hours are asked for where a track says place and day. No forecast is
 * asked for a day that none reaches.
 */
function airOf(ride: RideDraft, units: UnitChoice, profile: Profile): Partial<RideDraft> {
  const now = instant(Date.now());
  const reached = forecastReaches(profile.points[0]?.at ?? now, now);
  if (exampleParts(ride, units).hours) return { air: reached ? 'forecast' : 'past' };
  return ride.air === 'forecast' && !reached ? { air: 'past' } : {};
}

/** The tracks of the chosen file, and the one that is taken. A file that cannot be read takes the track before it away. */
function useTracks({ ride, units }: Omit<GpxFieldProps, 'errors'>) {
  const [read, setRead] = useState<ReadFile | null>(null);
  const [chosen, setChosen] = useState(0);
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const latest = useRef<File>(undefined);
  function take(tracks: ReadFile, index: number) {
    const track = tracks.tracks[index];
    if (track === undefined) return;
    const profile = profileOf(track);
    setChosen(index);
    ride.setAll({
      track: profileToText(profile),
      untimed: String(tracks.untimed),
      ...startTexts(profile),
      ...dayOf(profile, tracks.zoneAt),
      ...airOf(ride.value, units, profile),
    });
  }
  async function open(file: File | undefined) {
    if (file === undefined) return;
    const before = profileFromText(ride.value.track);
    latest.current = file;
    setBusy(true);
    const tracks = await tracksOf(file);
    if (latest.current !== file) return;
    setBusy(false);
    if (typeof tracks === 'string') {
      setRead(null);
      setProblem(before === null ? tracks : `${tracks} ${TRACK_TAKEN_AWAY}`);
      if (before !== null) ride.setAll({ track: '', untimed: '', ...withoutStart(ride.value, before) });
      return;
    }
    setProblem(undefined);
    setRead(tracks);
    take(tracks, 0);
  }
  return { read, chosen, problem, busy, take, open };
}

/** A GPX file, and which of its tracks. */
export function GpxField({ ride, errors, units }: GpxFieldProps) {
  const { read, chosen, problem, busy, take, open } = useTracks({ ride, units });
  const kept = profileFromText(ride.value.track);
  return (
    <>
      <Field
        label="GPX file"
        hint="GPX 1.1 or 1.0, up to 20 MB. It is read in this browser; only where it starts is sent, to ask for its weather."
        error={kept === null ? (problem ?? errors.track) : errors.track}
      >
        {(ids) => (
          <input
            {...ids}
            type="file"
            accept=".gpx,application/gpx+xml,application/xml,text/xml"
            className={fieldStyles.control}
            onChange={(event) => void open(event.target.files?.[0])}
          />
        )}
      </Field>
      {busy ? <p role="status">Reading the track…</p> : null}
      {read === null || read.tracks.length < 2 ? null : (
        <Select
          label="Track"
          value={String(chosen)}
          options={read.tracks.map(({ name }, i) => ({
            value: String(i),
            label: name === '' ? `Track ${i + 1}` : name,
          }))}
          onChange={(index) => take(read, Number(index))}
        />
      )}
      {kept === null ? (
        <p>No track yet: choose a file.</p>
      ) : (
        <Notice title={kept.name === '' ? 'Track read.' : kept.name}>
          {trackNotes(kept, Number(ride.value.untimed)).map((note) => (
            <p key={note}>{note}</p>
          ))}
          <p>{trackZoneNote(ride.value.trackZone, ride.value.timezone)}</p>
        </Notice>
      )}
    </>
  );
}
