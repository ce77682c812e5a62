'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import type { Night } from '@/lib/night/night';
import type { Plan } from '@/lib/plan/types';
import { OPEN_PAGE } from '@/lib/share/addresses';
import { type Instant, instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import styles from './share.module.css';

/** What packs and draws links comes when somebody wants to share. */
const SharePanel = dynamic(() => import('./share-panel').then((module) => module.SharePanel), {
  ssr: false,
  loading: () => <p>Packing the night…</p>,
});

type ShareNightProps = { readonly night: Night; readonly plan: Plan; readonly units: UnitChoice };

/** The ways a night leaves this browser. */
export function ShareNight({ night, plan, units }: ShareNightProps) {
  const [sharedAt, setSharedAt] = useState<Instant | null>(null);
  return (
    <div className={styles.share} data-open={sharedAt !== null}>
      <Section title="Share" id="share">
        <p className={styles.words}>
          A link, a code to scan, a calendar with alarms that follows the forecast, a table or a file. No
          account; the night itself is in the link.
        </p>
        {sharedAt === null ? (
          <ButtonRow>
            <Button onClick={() => setSharedAt(instant(Date.now()))}>Share this night</Button>
            <Way href={OPEN_PAGE}>Open a link or a file</Way>
          </ButtonRow>
        ) : (
          <SharePanel night={night} plan={plan} units={units} sharedAt={sharedAt} />
        )}
      </Section>
    </div>
  );
}
