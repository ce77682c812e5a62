import { useState } from 'react';
import { Field } from '@/components/ui/field';
import fieldStyles from '@/components/ui/field.module.css';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import type { GpxTracks } from '@/lib/trail/gpx';
import { MOST_GPX_BYTES } from '@/lib/trail/gpx-shape';
import { profileOf } from '@/lib/trail/track';
import { gpxProblemSentence, trackNotes } from '@/lib/words/gpx-problems';
import { profileFromText, profileToText } from './profile-text';
import type { RidePartProps } from './ride-part-props';

/** Reads a file's track in this browser; the file goes nowhere. The reader is loaded when it is first needed. */
async function tracksOf(file: File): Promise<GpxTracks | string> {
  if (file.size > MOST_GPX_BYTES)
    return gpxProblemSentence({ code: 'gpx-too-large', mostBytes: MOST_GPX_BYTES });
  try {
    const [{ readGpx }, text] = await Promise.all([import('@/lib/trail/gpx'), file.text()]);
    const read = readGpx(text, (xml) => new DOMParser().parseFromString(xml, 'application/xml'));
    return read.ok ? read.value : gpxProblemSentence(read.reason);
  } catch {
    return 'The file could not be read. Choose it again.';
  }
}

/** The tracks of the chosen file, and the one that is taken. */
function useTracks(ride: RidePartProps['ride']) {
  const [read, setRead] = useState<GpxTracks | null>(null);
  const [chosen, setChosen] = useState(0);
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  function take(tracks: GpxTracks, index: number) {
    const track = tracks.tracks[index];
    if (track === undefined) return;
    const profile = profileOf(track);
    setChosen(index);
    ride.setAll({
      track: profileToText(profile),
      untimed: String(tracks.untimed),
      latitude: profile.start.latitude.toFixed(4),
      longitude: profile.start.longitude.toFixed(4),
    });
  }
  async function open(file: File | undefined) {
    if (file === undefined) return;
    setBusy(true);
    const tracks = await tracksOf(file);
    setBusy(false);
    if (typeof tracks === 'string') return setProblem(tracks);
    setProblem(undefined);
    setRead(tracks);
    take(tracks, 0);
  }
  return { read, chosen, problem, busy, take, open };
}

/** A GPX file, and which of its tracks. */
export function GpxField({ ride, errors }: RidePartProps) {
  const { read, chosen, problem, busy, take, open } = useTracks(ride);
  const kept = profileFromText(ride.value.track);
  return (
    <>
      <Field
        label="GPX file"
        hint="GPX 1.1 or 1.0, up to 20 MB. It is read in this browser and sent nowhere."
        error={problem ?? errors.track}
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
        </Notice>
      )}
    </>
  );
}
