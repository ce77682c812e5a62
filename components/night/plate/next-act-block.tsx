'use client';

import { useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import type { Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { settingText } from '@/lib/words/settings';
import { nextAct } from './next-act';
import { NextActWords } from './next-act-words';
import styles from './plate.module.css';
import { ScheduleDialog } from './schedule-dialog';

type NextActBlockProps = {
  readonly plan: Plan;
  readonly fitted: Setting;
  readonly now: Instant;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** The one thing to do next, when, and the buttons that tell the plan how it went. */
export function NextActBlock({ plan, fitted, now, zone, acts, large }: NextActBlockProps) {
  const [asking, setAsking] = useState(false);
  const act = nextAct(plan, now);
  return (
    <section className={styles.block} aria-label="Next">
      <div className={styles.row}>
        <h2 className={styles.label}>Next</h2>
        <Button
          kind="quiet"
          size={large ? 'large' : 'normal'}
          className={styles.aside}
          onClick={() => setAsking(true)}
        >
          Off schedule
        </Button>
      </div>
      <NextActWords act={act} plan={plan} now={now} zone={zone} />
      {act.kind === 'swap' ? (
        <Button kind="primary" size={large ? 'decide' : 'normal'} wide onClick={() => acts.fit(act.swap.to)}>
          I have fitted {settingText(act.swap.to)}
        </Button>
      ) : null}
      {asking ? (
        <ScheduleDialog {...{ plan, fitted, now, zone, acts }} onClose={() => setAsking(false)} />
      ) : null}
    </section>
  );
}
