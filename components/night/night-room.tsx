'use client';

import dynamic from 'next/dynamic';
import { useEffect, useState } from 'react';
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
      return <NoEventYet />;
    case 'no-machine':
      return <NoMachine event={state.event} />;
    case 'problem':
      return <NoPlan records={state.records} problem={state.problem} />;
    case 'ready':
      return <ReadyNight night={state.night} standing={state.standing} preferences={state.preferences} />;
  }
}

/** What an empty store may take to be given the demo night [ms]; only where that fails is there no night. */
const DEMO_MS = 2000;

function NoEventYet() {
  const [waited, setWaited] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setWaited(true), DEMO_MS);
    return () => clearTimeout(timer);
  }, []);
  return waited ? <NoEvent /> : <Opening />;
}
