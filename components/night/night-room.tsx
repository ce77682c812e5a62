'use client';

import { NoEvent, NoMachine, NoPlan } from './no-plan';
import { Opening } from './opening';
import { ReadyNight } from './ready-night';
import { useNight } from './use-night';

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
      return <ReadyNight {...state} />;
  }
}
