'use client';

import { useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Wholes } from '@/components/night/wholes';
import { Button } from '@/components/ui/button';
import type { Machine } from '@/lib/carb/machine';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { questionWords } from '@/lib/words/question';
import { together } from '@/lib/words/together';
import { FitDialog } from './fit-dialog';
import styles from './plate.module.css';

type QuestionBlockProps = {
  readonly machine: Machine;
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly acts: Acts;
  /** At the track buttons are taller. */
  readonly large: boolean;
};

/** An accepted swap that nobody confirmed: asked before anything else, since all risks hang on the answer. */
export function QuestionBlock({ machine, standing, zone, acts, large }: QuestionBlockProps) {
  const [asking, setAsking] = useState(false);
  const words = questionWords(standing, zone);
  const { question } = standing;
  if (words === null || question === null) return null;
  const size = large ? 'decide' : 'act';
  return (
    <section className={styles.question} aria-label="Not told">
      <h2 className={styles.ask}>{together(words.ask)}</h2>
      <p>{together(words.short)}</p>
      {words.yes.map(({ label, at }, place) => (
        // Only one looks like the answer that is expected: it went in when it was to.
        <Button
          key={label}
          kind={place === 0 ? 'primary' : 'plain'}
          size={size}
          wide
          onClick={() => acts.fit(question.to, at)}
        >
          <span>
            <Wholes text={label} />
          </span>
        </Button>
      ))}
      <Button size={size} wide onClick={() => acts.fit(question.from)}>
        <span>
          <Wholes text={words.no} />
        </span>
      </Button>
      <Button size={size} wide onClick={() => setAsking(true)}>
        Something else
      </Button>
      {asking ? (
        <FitDialog
          machine={machine}
          fitted={question.from}
          onFit={(setting) => {
            acts.fit(setting);
            setAsking(false);
          }}
          ahead={acts.aheadOfFit}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </section>
  );
}
