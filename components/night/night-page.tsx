'use client';

import styles from './night-page.module.css';
import { NoEvent, NoMachine, NoPlan } from './no-plan';
import { ReadyNight } from './ready-night';
import { useNight } from './use-night';

/** The first page: tonight's plan, or what is missing for one. */
export function NightPage() {
  const state = useNight();
  switch (state.status) {
    case 'opening':
      return (
        <main className={styles.waiting} aria-busy="true">
          <p>Opening the night...</p>
        </main>
      );
    case 'no-event':
      return <NoEvent />;
    case 'no-machine':
      return <NoMachine event={state.event} />;
    case 'problem':
      return <NoPlan records={state.records} problem={state.problem} />;
    case 'ready':
      return <ReadyNight {...state} />;
  }
}
