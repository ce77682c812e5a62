'use client';

import { useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import { useHold } from '@/components/ui/use-hold';
import { Way } from '@/components/ui/way';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { jobWords } from '@/lib/words/job';
import styles from './plate.module.css';
import { ScheduleDialog } from './schedule-dialog';

type NextActBlockProps = {
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** The one thing to do next, when, and the buttons that tell the plan how it went. */
export function NextActBlock({ standing, zone, acts, large }: NextActBlockProps) {
  const [asking, setAsking] = useState(false);
  const { held, hold } = useHold();
  const { job } = standing;
  const size = large ? 'large' : 'normal';
  const words = jobWords(standing, zone);
  const done = held ?? words.done;
  return (
    <section className={styles.block} aria-label="Next">
      <div className={styles.row}>
        <h2 className={styles.label}>Next</h2>
        {job.kind === 'over' || job.kind === 'out' ? null : (
          <>
            <Button kind="quiet" size={size} className={styles.aside} onClick={() => setAsking(true)}>
              Running late?
            </Button>
            <Button kind="quiet" size={size} className={styles.aside} onClick={acts.knockOut}>
              Knocked out
            </Button>
          </>
        )}
      </div>
      <p className={styles.lead}>{words.lead}</p>
      {words.when === null ? null : (
        <p className={styles.when}>
          <span>{words.when.window}</span> <span>{words.when.away}</span>
        </p>
      )}
      {words.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {done === null ? null : (
        <Button
          kind="primary"
          size={large ? 'decide' : 'normal'}
          wide
          aria-disabled={held !== null}
          onClick={() => {
            if (held !== null || job.kind !== 'swap') return;
            hold(done);
            acts.fit(job.swap.to);
          }}
        >
          {done}
        </Button>
      )}
      {job.kind === 'out' ? (
        <Button size={large ? 'decide' : 'normal'} wide onClick={acts.comeBack}>
          Back in
        </Button>
      ) : null}
      {job.kind === 'over' ? <Way href="/after">How forecast and plan held</Way> : null}
      {asking ? <ScheduleDialog {...{ standing, zone, acts }} onClose={() => setAsking(false)} /> : null}
    </section>
  );
}
