import { isolated } from './isolated';

/** What is said where another tab of this browser did something that this page shows, or that a form here stands on. */
export const ELSEWHERE = {
  formGone:
    'This was deleted in another tab. What you typed stays here: save to put it back with your changes, or cancel to leave it deleted.',
  back: 'Show what was here',
  fine: 'Good',
} as const;

type Chosen = { readonly event: string | null; readonly machine: string | null };

/** "Another tab chose Twin 440 at Night drags." */
export function chosenElsewhereSentence({ event, machine }: Chosen): string {
  const what = [machine, event].filter((name) => name !== null).map(isolated);
  return `Another tab of this browser chose ${what.length === 0 ? 'another night' : what.join(' at ')}; this page shows it too.`;
}
