'use client';

import dynamic from 'next/dynamic';
import { Opening } from './opening';
import { ReadyNight } from './ready-night';
import { useNight } from './use-night';

// Few nights lack something: what is said then is loaded then.
const loadWhatLacks = () => import('./no-plan');
const NoEvent = dynamic(() => loadWhatLacks().then((module) => module.NoEvent), {
  ssr: false,
  loading: Opening,
});
const NoMachine = dynamic(() => loadWhatLacks().then((module) => module.NoMachine), {
  ssr: false,
  loading: Opening,
});
const NoPlan = dynamic(() => loadWhatLacks().then((module) => module.NoPlan), {
  ssr: false,
  loading: Opening,
});

/** Tonight's plan, or what is missing for one. */
export function NightRoom() {
  const state = useNight();
  switch (state.status) {
    case 'opening':
      return <Opening />;
    case 'no-event':
      return <NoEvent />;
    case 'no-machine':
      return <NoMachine event={state.event} />;
    case 'problem':
      return <NoPlan records={state.records} problem={state.problem} />;
    case 'ready':
      return <ReadyNight night={state.night} standing={state.standing} preferences={state.preferences} />;
  }
}
