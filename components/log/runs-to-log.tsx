'use client';

import { useNight } from '@/components/night/use-night';
import { useHours } from '@/components/store/use-clock-zone';
import type { Write } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { Section } from '@/components/ui/section';
import type { Verdict } from '@/lib/carb/observation';
import type { LogRecord, Stored } from '@/lib/store/records';
import { clockFace } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatTemperature } from '@/lib/units/format';
import { verdictText } from '@/lib/words/log';
import { settingText } from '@/lib/words/settings';
import styles from './log.module.css';
import { judged, type RunToLog, runsToLog } from './to-log';

const TAPS: readonly { readonly verdict: Verdict | null; readonly label: string }[] = [
  { verdict: 'lean', label: 'Lean' },
  { verdict: 'right', label: 'Right' },
  { verdict: 'rich', label: 'Rich' },
  { verdict: null, label: 'Not judged' },
];

type RunsToLogProps = {
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly write: Write;
};

/** After a run: its jets are known from the plan, its air from the hour; a tap says how it was. */
export function RunsToLog({ log, units, write }: RunsToLogProps) {
  const state = useNight();
  if (state.status !== 'ready') return null;
  const { night } = state;
  const { plan } = state.standing;
  const [last, ...earlier] = runsToLog({ night, plan, log });
  const { event, machine } = night.records;
  const title = `${event.value.event.name}: ${machine.value.machine.name}`;
  const add = (run: RunToLog, verdict: Verdict | null) => {
    const entry = judged(run.entry, verdict);
    void write.add('log', entry, `${run.name}: ${verdictText(entry)}. Time and note can be added below.`);
  };
  return (
    <Section title={last === undefined ? 'After a run' : 'How was the last run?'} aside={title}>
      {last === undefined ? (
        <p>
          {plan.runs.some((run) => run.state === 'made')
            ? 'Every run of this night that is over is in the log. The next one shows up here when it is made.'
            : 'No run of this night is over yet. The first one shows up here when it is made.'}
        </p>
      ) : (
        <RunTaps run={last} units={units} onTap={add} large />
      )}
      {earlier.length === 0 ? null : (
        <Disclosure summary={`Earlier runs not in the log (${earlier.length})`}>
          {earlier.map((run) => (
            <RunTaps key={run.entry.at} run={run} units={units} onTap={add} />
          ))}
        </Disclosure>
      )}
    </Section>
  );
}

type RunTapsProps = {
  readonly run: RunToLog;
  readonly units: UnitChoice;
  readonly onTap: (run: RunToLog, verdict: Verdict | null) => void;
  readonly large?: boolean;
};

function RunTaps({ run, units, onTap, large = false }: RunTapsProps) {
  const { name, entry } = run;
  const hours = useHours();
  const facts = [
    clockFace(entry.at.slice(11, 16), hours),
    `on ${settingText(entry.setting)}`,
    formatTemperature(celsiusToKelvin(entry.air.temperatureC), units),
  ];
  return (
    <div className={styles.run}>
      <p className={styles.facts}>
        <strong>{name}</strong> {facts.join(', ')}
      </p>
      <div className={styles.verdicts}>
        {TAPS.map(({ verdict, label }) => (
          <Button
            key={label}
            size={large ? 'decide' : 'large'}
            aria-label={`${name}: ${label}`}
            onClick={() => onTap(run, verdict)}
          >
            {label}
          </Button>
        ))}
      </div>
    </div>
  );
}
