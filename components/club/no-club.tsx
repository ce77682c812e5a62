'use client';

import { Notice } from '@/components/ui/notice';
import { useHash } from '@/components/ui/use-hash';
import { Way } from '@/components/ui/way';
import type { UnitChoice } from '@/lib/units/choice';
import styles from './club-page.module.css';
import { NewClubNight } from './new-club-night';

/** Nothing in this browser yet: how to begin. */
export function NoClub({ units }: { readonly units: UnitChoice }) {
  const view = useHash();
  return (
    <main className={styles.words}>
      <h1>Club</h1>
      <Notice title="There is no event yet.">
        <p>Say where and when you race; then type or paste the hours, and paste or pick your racers.</p>
      </Notice>
      <Way kind="firm" href="#new">
        Start a club night
      </Way>
      {view === 'new' ? <NewClubNight units={units} /> : null}
    </main>
  );
}
