'use client';

import { useMemo, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Stack } from '@/components/ui/stack';
import { nightOfRacer, type SharedClub, sharedClubLabels } from '@/lib/share/shared-club';
import type { Instant } from '@/lib/time/instant';
import { isolated } from '@/lib/words/isolated';
import { NightPreview } from './night-preview';
import styles from './share.module.css';

type ClubPickProps = { readonly club: SharedClub; readonly now: Instant };

/** A club's briefing: everybody's name, and behind each the own night. */
export function ClubPick({ club, now }: ClubPickProps) {
  const [place, setPlace] = useState<number | null>(null);
  const labels = useMemo(() => sharedClubLabels(club), [club]);
  const night = useMemo(() => (place === null ? null : nightOfRacer(club, place)), [club, place]);
  if (night !== null)
    return (
      <Stack>
        <div>
          <Button onClick={() => setPlace(null)}>Back to the names</Button>
        </div>
        <NightPreview night={night} now={now} />
      </Stack>
    );
  return (
    <Stack>
      <h2>{isolated(club.event.name)}</h2>
      <p className={styles.words}>Who are you? You see your plan first; nothing of yours is changed.</p>
      <ul className={styles.names}>
        {labels.map((label, i) => (
          <li key={label}>
            <Button size="large" onClick={() => setPlace(i)}>
              {isolated(label)}
            </Button>
          </li>
        ))}
      </ul>
    </Stack>
  );
}
