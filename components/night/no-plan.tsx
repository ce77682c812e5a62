'use client';

import { useClockZone } from '@/components/store/use-clock-zone';
import { usePreferences } from '@/components/store/use-preferences';
import { Notice } from '@/components/ui/notice';
import { Way } from '@/components/ui/way';
import { FollowedWeather } from '@/components/weather/followed-weather';
import type { NightProblem, NightRecords } from '@/lib/night/night';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { EventRecord, Stored } from '@/lib/store/records';
import { problemSentences, problemTitle, waysOut } from '@/lib/words/night-problems';
import { NightHead } from './night-head';
import styles from './night-page.module.css';
import { SetupOnRequest } from './setup/setup-on-request';
import { SetupSection } from './setup/setup-section';

export function NoEvent() {
  return (
    <main className={styles.alone}>
      <h1>No night</h1>
      <Notice title="There is no night yet.">
        <p>Reload the page to get the invented demo night back, or start your own.</p>
      </Notice>
      <SetupSection event={null} machine={null} />
    </main>
  );
}

export function NoMachine({ event }: { readonly event: Stored<EventRecord> }) {
  return (
    <main className={styles.alone}>
      <NightHead event={event.value} machine={null} />
      <Notice title="No machine takes part in this night.">
        <p>
          Start the night anew with the machine you race: its carburettors, the jets you own and a baseline
          you have proven.
        </p>
      </Notice>
      <SetupSection event={event} machine={null} />
    </main>
  );
}

type NoPlanProps = { readonly records: NightRecords; readonly problem: NightProblem };

/** What is missing for a plan, and the one way to give it; what is there already stands behind a link. */
export function NoPlan({ records, problem }: NoPlanProps) {
  const { preferences } = usePreferences();
  const { event, machine } = records;
  const zone = useClockZone(event.value.event.timezone);
  const { temperature, pressure, elevation } = preferences;
  const sentences = problemSentences(problem, {
    zone,
    units: { temperature, pressure, elevation },
    runNames: eventOfRacer(event.value, machine.id).runs.map(({ name }) => name),
  });
  // Where a forecast is followed and none has come, asking anew stands below, with the reason.
  const follows = event.value.forecastId !== null;
  const [first, ...others] = waysOut(problem).filter(({ form }) => !follows || form !== 'forecast');
  return (
    <main className={styles.alone}>
      <NightHead event={event.value} machine={machine.value} />
      <section className={styles.missing} aria-labelledby="missing">
        <h2 id="missing" className={styles.question}>
          {problemTitle(problem)}
        </h2>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {first === undefined ? null : (
          <Way kind="act" href={`#${first.form}`}>
            {first.label}
          </Way>
        )}
        {others.map(({ form, label }) => (
          <Way key={form} href={`#${form}`}>
            {label}
          </Way>
        ))}
      </section>
      <FollowedWeather event={event} typing={first?.form !== 'hours'} />
      <SetupOnRequest event={event} machine={machine} />
    </main>
  );
}
