import { useState } from 'react';
import type { Part } from '@/components/draft/part';
import { askFor } from '@/components/server/ask-for';
import { Button } from '@/components/ui/button';
import { ButtonRow } from '@/components/ui/stack';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import { profileToText } from '@/lib/trail/profile-text';
import { type Profile, withHeights } from '@/lib/trail/track';
import { metre } from '@/lib/units/quantity';
import { placesJsonSchema } from '@/lib/weather/places-json';
import { askHeightsSentence } from '@/lib/words/gpx-problems';

type AskHeightsProps = { readonly profile: Profile; readonly ride: Part<RideDraft> };

/** Offers the heights of the ground for a track that has none; its points go to the service only then. */
export function AskHeights({ profile, ride }: AskHeightsProps) {
  const [asking, setAsking] = useState(false);
  const [problem, setProblem] = useState('');
  const { spots } = profile;
  async function ask() {
    setAsking(true);
    setProblem('');
    const points = spots.map(({ latitude, longitude }) => `${latitude.toFixed(4)},${longitude.toFixed(4)}`);
    const answer = await askFor({
      path: `/api/places?${new URLSearchParams({ points: points.join(';') })}`,
      reader: placesJsonSchema,
      instead: 'Type the three heights below.',
    });
    setAsking(false);
    const heights = answer.ok ? answer.value.places.map(({ elevationM }) => elevationM) : [];
    const known = heights.filter((height) => height !== null).map(metre);
    if (!answer.ok) setProblem(answer.reason);
    else if (known.length < spots.length) setProblem('Heights are missing. Type the three heights below.');
    else ride.set('track', profileToText(withHeights(profile, known)));
  }
  return (
    <>
      <p>{askHeightsSentence(spots.length)}</p>
      <ButtonRow>
        <Button disabled={asking} onClick={() => void ask()}>
          Take the heights of the ground
        </Button>
      </ButtonRow>
      <p role="status">{asking ? 'Asking for the heights…' : problem}</p>
    </>
  );
}
