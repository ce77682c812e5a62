'use client';

import { useState } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import type { Verdict } from '@/lib/carb/verdicts';
import { judged, type RunToLog } from '@/lib/night/to-log';
import type { LogRecord } from '@/lib/store/records';
import { clockFace } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatTemperature } from '@/lib/units/format';
import { settingText } from '@/lib/words/settings';
import { together } from '@/lib/words/together';
import { RUN_VERDICTS } from '@/lib/words/verdict-choices';
import { CylinderDialog } from './cylinder-dialog';
import styles from './log.module.css';

type RunTapsProps = {
  readonly run: RunToLog;
  readonly units: UnitChoice;
  /** A tap was just made here: the next one does nothing. */
  readonly held: boolean;
  readonly large: boolean;
  readonly onSay: (entry: LogRecord) => void;
};

/** One tap says how a run was; with several carburettors also cylinder by cylinder. */
export function RunTaps({ run, units, held, large, onSay }: RunTapsProps) {
  const [each, setEach] = useState(false);
  const { name, entry } = run;
  const { mains } = entry.setting;
  const hours = useHours();
  const size = large ? 'decide' : 'large';
  const facts = [
    clockFace(entry.at.slice(11, 16), hours),
    `on ${settingText(entry.setting)}`,
    formatTemperature(celsiusToKelvin(entry.air.temperatureC), units),
  ];
  const say = (verdicts: readonly (Verdict | null)[], sizes: number | null = null) => {
    if (!held) onSay(judged(entry, verdicts, sizes));
  };
  return (
    <div className={styles.run}>
      <p className={styles.facts}>
        <strong>{name}</strong>, {together(facts.join(', '))}
      </p>
      <div className={styles.verdicts}>
        {RUN_VERDICTS.map(({ value, label }) => (
          <Button
            key={label}
            size={size}
            aria-label={`${name}: ${label}`}
            aria-disabled={held}
            onClick={() => say(mains.map(() => (value === 'none' ? null : value)))}
          >
            {label}
          </Button>
        ))}
        {mains.length > 1 ? (
          <Button
            size={size}
            aria-label={`${name}: By cylinder`}
            aria-disabled={held}
            onClick={() => setEach(!held)}
          >
            By cylinder
          </Button>
        ) : null}
      </div>
      {each ? (
        <CylinderDialog
          title={name}
          cylinders={mains.length}
          onSay={(verdicts, sizes) => {
            setEach(false);
            say(verdicts, sizes);
          }}
          onClose={() => setEach(false)}
        />
      ) : null}
    </div>
  );
}
