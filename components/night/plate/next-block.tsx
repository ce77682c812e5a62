'use client';

import { Fragment, useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Wholes } from '@/components/night/wholes';
import { Button } from '@/components/ui/button';
import { classNames } from '@/components/ui/class-names';
import { NoticeWord } from '@/components/ui/notice';
import { useHold } from '@/components/ui/use-hold';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { Way } from '@/components/ui/way';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { jobWords } from '@/lib/words/job';
import type { ActPart } from '@/lib/words/settings';
import { actInRows, together } from '@/lib/words/together';
import styles from './next-block.module.css';
import { ScheduleDialog } from './schedule-dialog';

type NextBlockProps = {
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** The one thing to do next, when, and the buttons that tell the plan how it went. */
export function NextBlock({ standing, zone, acts, large }: NextBlockProps) {
  const [asking, setAsking] = useState(false);
  const { held, hold } = useHold();
  const { job } = standing;
  const words = jobWords(standing, zone);
  const done = held ?? words.done;
  return (
    <section className={styles.block} aria-label="Next">
      <div
        className={classNames(styles.job, styles[words.shape])}
        role={words.shape === 'stop' ? 'alert' : undefined}
      >
        <Label stop={words.shape === 'stop'} />
        {words.when === null ? null : (
          <p className={styles.when}>
            <strong className={styles.clock}>{words.when.clock}</strong>{' '}
            <span className={styles.away}>{words.when.away}</span>
          </p>
        )}
        <p className={styles.lead}>
          <Lead parts={words.parts} />
        </p>
        <p className={styles.lines}>{together(words.lines.join(' '))}</p>
        {done === null ? null : (
          <Button
            kind="primary"
            size={large ? 'decide' : 'act'}
            wide
            aria-disabled={held !== null}
            onClick={() => {
              if (held !== null || job.kind !== 'swap') return;
              hold(done);
              acts.fit(job.swap.to);
            }}
          >
            <span>
              <Wholes text={done} />
            </span>
          </Button>
        )}
        {job.kind === 'out' ? (
          <Button size={large ? 'decide' : 'act'} wide onClick={acts.comeBack}>
            Back in
          </Button>
        ) : null}
        {job.kind === 'over' ? <Way href="/after">How forecast and plan held</Way> : null}
      </div>
      {job.kind === 'over' || job.kind === 'out' ? null : (
        <Asides large={large} onLate={() => setAsking(true)} onOut={acts.knockOut} />
      )}
      {asking ? <ScheduleDialog {...{ standing, zone, acts }} onClose={() => setAsking(false)} /> : null}
    </section>
  );
}

/** "Next", or to the eye the word of every other danger. */
function Label({ stop }: { readonly stop: boolean }) {
  if (!stop) return <h2 className={styles.label}>Next</h2>;
  return (
    <h2>
      <VisuallyHidden>Next </VisuallyHidden>
      <NoticeWord tone="danger" />
    </h2>
  );
}

type AsidesProps = { readonly large: boolean; readonly onLate: () => void; readonly onOut: () => void };

/** What else can have happened. */
function Asides({ large, onLate, onOut }: AsidesProps) {
  const size = large ? 'large' : 'normal';
  return (
    <div className={styles.asides}>
      <Button kind="quiet" size={size} onClick={onLate}>
        Running late?
      </Button>
      <Button kind="quiet" size={size} onClick={onOut}>
        Knocked out
      </Button>
    </div>
  );
}

/**
 * "Put in 420 410 420", with a line under each number that is another one than before. The jets are a block beside the
 * words: those of a second row stand under those of the first.
 */
function Lead({ parts }: { readonly parts: readonly ActPart[] }) {
  const { verb, rows, rest } = actInRows(parts);
  return (
    <>
      <span>{together(verb)}</span>{' '}
      {rows.length === 0 ? null : (
        <span className={styles.rows}>
          {rows.map((row, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of one machine, told apart by their place
            <span key={place}>
              <Pieces parts={row} />{' '}
            </span>
          ))}
        </span>
      )}{' '}
      {rest.length === 0 ? null : (
        <span>
          <Pieces parts={rest} />
        </span>
      )}
    </>
  );
}

function Pieces({ parts }: { readonly parts: readonly ActPart[] }) {
  return parts.map(({ text, changed }, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one sentence, told apart by their place
    <Fragment key={place}>
      {place === 0 ? '' : ' '}
      <span className={changed ? styles.changed : undefined}>{together(text)}</span>
    </Fragment>
  ));
}
