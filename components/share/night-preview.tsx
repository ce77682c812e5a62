'use client';

import { useMemo } from 'react';
import { useClockZone } from '@/components/store/use-clock-zone';
import { usePreferences } from '@/components/store/use-preferences';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { Stack } from '@/components/ui/stack';
import { instantFromJson, runsFromEvent } from '@/lib/contract/event-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import type { Run } from '@/lib/plan/types';
import { previewedPlans } from '@/lib/share/previewed-plans';
import { sharedLabels } from '@/lib/share/shared-labels';
import type { SharedMachine, SharedNight } from '@/lib/share/shared-night';
import { type Instant, instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { formatElevation } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { type CallVoice, callSentences } from '@/lib/words/call';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { dayText } from '@/lib/words/day-text';
import { isolated } from '@/lib/words/isolated';
import { counted } from '@/lib/words/listing';
import { jetsText } from '@/lib/words/settings';
import { dateClockText, windowText } from '@/lib/words/times';
import { KeepNight } from './keep-night';
import styles from './share.module.css';

type PreviewProps = { readonly night: SharedNight; readonly now: Instant };

/** What a link or a file holds, with the call as it is now; kept only when the person says so. */
export function NightPreview({ night, now }: PreviewProps) {
  const { preferences } = usePreferences();
  const { temperature, pressure, elevation } = preferences;
  const { event } = night;
  const zone = useClockZone(event.timezone);
  const voice = useMemo<CallVoice>(
    () => ({ zone, units: { temperature, pressure, elevation }, now, ride: event.ride }),
    [event, zone, temperature, pressure, elevation, now],
  );
  const labels = useMemo(() => sharedLabels(night.machines), [night]);
  const plans = useMemo(() => previewedPlans(night, now), [night, now]);
  return (
    <Stack>
      <p className={styles.words}>A look at a night somebody shared. Nothing of yours has changed.</p>
      <h2>{event.name}</h2>
      <Facts night={night} voice={voice} />
      {plans.ok ? (
        plans.value.map(({ shared, place, standing }) => (
          <Section key={place} title={isolated(labels[place] ?? shared.machine.name)} level={3}>
            <MachineFacts shared={shared} />
            {standing.ok ? (
              callSentences(standing.value, voice).map((sentence) => (
                <p key={sentence} className={styles.call}>
                  {sentence}
                </p>
              ))
            ) : (
              <Problems problems={[standing.reason]} night={night} voice={voice} />
            )}
          </Section>
        ))
      ) : (
        <Problems problems={plans.reason} night={night} voice={voice} />
      )}
      <KeepNight night={night} />
    </Stack>
  );
}

type FactsProps = { readonly night: SharedNight; readonly voice: CallVoice };

function Facts({ night, voice: { zone, units } }: FactsProps) {
  const { event, hours, readings, sharedAt } = night;
  const runs = runsFromEvent(event);
  return (
    <dl className={styles.facts}>
      <dt>Where</dt>
      <dd>
        {[event.place?.name, formatElevation(metre(event.elevationM), units), event.timezone]
          .filter(Boolean)
          .join(', ')}
      </dd>
      <dt>When</dt>
      <dd>{whenText(runs, zone)}</dd>
      <dt>Hours</dt>
      <dd>
        {hours.length === 0
          ? 'None'
          : `${hours.length} ${night.hoursTyped === true ? 'typed' : 'of a forecast'}${readings.length > 0 ? `, ${counted(readings.length, 'reading')} at the track` : ''}`}
      </dd>
      <dt>Shared</dt>
      <dd>{dateClockText(instantFromJson(sharedAt), zone)}</dd>
    </dl>
  );
}

function whenText(runs: readonly Run[], zone: ClockZone): string {
  if (runs.length === 0) return 'No runs';
  const start = instant(Math.min(...runs.map((run) => run.start)));
  const end = instant(Math.max(...runs.map((run) => run.end)));
  return `${dayText(start, zone)}: ${counted(runs.length, 'run')}, ${windowText(start, end, { zone, from: start })}`;
}

function MachineFacts({ shared }: { readonly shared: SharedMachine }) {
  const { machine, fitted } = shared;
  const baseline = jetsText(machine.carburettors.map(({ main }) => main));
  return (
    <p>
      {`Baseline ${baseline}. ${counted(machine.box.length, 'size')} in the box.`}
      {fitted === undefined ? '' : ` In when shared: ${jetsText(fitted.mains)}.`}
    </p>
  );
}

type ProblemsProps = FactsProps & { readonly problems: readonly ContractProblem[] };

function Problems({ problems, night, voice }: ProblemsProps) {
  const runNames = night.event.runs.map(({ name }) => name);
  const sentences = new Set(
    problems.map(({ reason }) => contractProblemSentence(reason, { ...voice, runNames })),
  );
  return (
    <Notice tone="caution" title="There is no call for it as it is.">
      {[...sentences].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Notice>
  );
}
