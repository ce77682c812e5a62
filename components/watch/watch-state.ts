import type { Night } from '@/components/night/night';
import { comparePlans } from '@/lib/plan/difference';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { changeSentences } from '@/lib/words/changes';
import { actsLine } from '@/lib/words/plan-acts';
import type { Voice } from '@/lib/words/voice';
import { acceptedOfNight } from './accepted-of-night';

/** How the plan of now stands to the one the person accepted. */
export type WatchState =
  | { readonly status: 'nothing-accepted' }
  | {
      readonly status: 'same' | 'later-acts-changed' | 'next-act-changed';
      readonly accepted: string;
      readonly now: string;
      readonly differences: readonly string[];
    };

type WatchVoice = Voice & { readonly now: Instant };

export function watchState(night: Night, plan: Plan, voice: WatchVoice): WatchState {
  const accepted = acceptedOfNight(night, plan);
  if (accepted === null) return { status: 'nothing-accepted' };
  const difference = comparePlans(accepted, plan);
  const clock = { zone: voice.zone, now: voice.now };
  const differences = changeSentences(difference, plan, voice);
  const startMoved = difference.changes.some(({ code }) => code === 'start-changed');
  return {
    status:
      differences.length === 0
        ? 'same'
        : difference.nextActChanged || startMoved
          ? 'next-act-changed'
          : 'later-acts-changed',
    accepted: actsLine(accepted, clock),
    now: actsLine(plan, clock),
    differences,
  };
}

/** What is to be said aloud about a state; '' where there is nothing to say. */
export function alarmOf(state: WatchState): string {
  return state.status === 'next-act-changed' ? state.differences.join(' ') : '';
}

export type Heard = {
  /** What would have been said last time. */
  readonly alarm: string;
  /** The event as the person left it: a change of their own is no news to them. */
  readonly revision: number;
  readonly accepted: string;
};

export function heardOf(state: WatchState, revision: number): Heard {
  return {
    alarm: alarmOf(state),
    revision,
    accepted: state.status === 'nothing-accepted' ? '' : state.accepted,
  };
}

/** What to say now that one state has followed another; null: keep silent. */
export function newsBetween(before: Heard, after: Heard): string | null {
  if (before.alarm === after.alarm || before.revision !== after.revision) return null;
  return after.alarm === '' ? `Your plan holds again. ${after.accepted}` : after.alarm;
}
