'use client';

import { useState } from 'react';
import { FitDialog } from '@/components/night/plate/fit-dialog';
import { useHours } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import type { Machine, Setting } from '@/lib/carb/machine';
import type { RunToLog } from '@/lib/night/to-log';
import type { PastRunChoices } from '@/lib/standing/past-run';
import { clockFace } from '@/lib/time/zone';
import { pastRunWords } from '@/lib/words/log';
import styles from './log.module.css';

type RunAskedProps = {
  readonly run: RunToLog;
  readonly choices: PastRunChoices;
  readonly machine: Machine;
  /** A tap was just made here: the next one does nothing. */
  readonly held: boolean;
  readonly large: boolean;
  readonly onTell: (setting: Setting) => void;
};

/** A past run of which nobody said what was in: a verdict on jets that nobody knows is worth nothing, so that is asked. */
export function RunAsked({ run, choices, machine, held, large, onTell }: RunAskedProps) {
  const [asking, setAsking] = useState(false);
  const words = pastRunWords(run.name, choices);
  const hours = useHours();
  const size = large ? 'decide' : 'large';
  const tell = (setting: Setting) => {
    if (!held) onTell(setting);
  };
  return (
    <div className={styles.run}>
      <p className={styles.facts}>
        <strong>{words.ask}</strong> {clockFace(run.entry.at.slice(11, 16), hours)}, and nobody said.
      </p>
      <div className={styles.settings}>
        {words.answers.map(({ setting, label }) => (
          <Button
            key={label}
            size={size}
            aria-label={`${run.name}: ${label}`}
            aria-disabled={held}
            onClick={() => tell(setting)}
          >
            {label}
          </Button>
        ))}
        <Button
          size={size}
          aria-label={`${run.name}: ${words.other}`}
          aria-disabled={held}
          onClick={() => setAsking(!held)}
        >
          {words.other}
        </Button>
      </div>
      {asking ? (
        <FitDialog
          machine={machine}
          fitted={choices.said}
          onFit={(setting) => {
            setAsking(false);
            tell(setting);
          }}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}
