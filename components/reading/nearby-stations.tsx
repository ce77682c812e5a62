'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Stack } from '@/components/ui/stack';
import type { UnitChoice } from '@/lib/units/choice';
import { type Offer, readingOfOffer } from '@/lib/weather/stations/offer';
import { offerSentence } from '@/lib/words/observations';
import type { PlannedNight } from '@/lib/words/what-moved';
import { MetarForm } from './metar-form';
import styles from './reading.module.css';
import { useNearby } from './use-nearby';
import type { ReadingDesk } from './use-reading-desk';

type NearbyProps = {
  readonly planned: PlannedNight;
  readonly units: UnitChoice;
  readonly desk: ReadingDesk;
};

/** What weather stations observed, offered one by one: nothing of it is used before somebody takes it. */
export function NearbyStations({ planned, units, desk }: NearbyProps) {
  const { event } = planned.night.records.event.value;
  const { elevation } = planned.night.series;
  const nearby = useNearby();
  const [pasted, setPasted] = useState<Offer | null>(null);
  const { place } = event;
  const { found } = nearby;
  const offers = [...(pasted === null ? [] : [pasted]), ...(found?.offers ?? [])];
  return (
    <Stack>
      <p className={styles.words}>
        A station is not the track: the farther away it is, the less it counts. It is used only where you take
        it.
      </p>
      {place === undefined ? null : (
        <Button disabled={nearby.busy} onClick={() => void nearby.ask({ place, elevation })}>
          Look for stations nearby
        </Button>
      )}
      <p role="status">{nearby.busy ? 'Asking…' : (found?.words ?? '')}</p>
      <ul className={styles.list} aria-label="Stations nearby">
        {offers.map((offer) => (
          <OfferRow key={readingOfOffer(offer).id} {...{ offer, planned, units, desk }} />
        ))}
      </ul>
      {found === null || found.credit === '' ? null : <p className={styles.words}>{found.credit}.</p>}
      <MetarForm units={units} site={elevation} planned={planned} onOffer={setPasted} />
    </Stack>
  );
}

function OfferRow({ offer, planned, units, desk }: NearbyProps & { readonly offer: Offer }) {
  const { now, night } = planned;
  const reading = readingOfOffer(offer);
  const taken = night.records.event.value.readings.some(({ id }) => id === reading.id);
  return (
    <li className={styles.row}>
      <p className={styles.words}>{offerSentence(offer, { now, units })}</p>
      <div className={styles.acts}>
        {taken ? (
          <span>Taken: it is among the readings.</span>
        ) : (
          <Button onClick={() => void desk.keep(reading)}>
            {`Use ${offer.observation.station} as a reading`}
          </Button>
        )}
      </div>
    </li>
  );
}
