import { acceptedOfNight, changedSince } from '@/lib/night/accepted-of-night';
import type { Night } from '@/lib/night/night';
import type { Plan } from '@/lib/plan/types';
import { isDangerous } from '@/lib/standing/danger';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { changeSentences } from '@/lib/words/changes';
import { actsLine } from '@/lib/words/plan-acts';
import type { Voice } from '@/lib/words/voice';

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
  const difference = changedSince(accepted, plan);
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

/** What the next act is, by its run and jets alone: the words around it change with every tenth of a degree. */
function actKey(state: WatchState, plan: Plan): string {
  if (state.status !== 'next-act-changed') return 'accepted';
  const open = plan.runs.find((run) => run.state === 'planned');
  const swap = plan.swaps.find(({ beforeRun }) => open !== undefined && beforeRun >= open.run);
  return JSON.stringify([open?.setting, swap?.beforeRun, swap?.to]);
}

/** One look of the watch: what the next act was, and all that was said since the person last acted. */
export type Look = {
  /** A change of the person's own raises it, and is no news to them. */
  readonly revision: number;
  readonly act: string;
  /** When each act was last spoken of. */
  readonly spoken: ReadonlyMap<string, Instant>;
};

/** An act that comes and goes at a limit is told once an hour, not with every breath of wind. */
const QUIET_MS = HOUR_MS;

type Seen = {
  readonly state: WatchState;
  readonly plan: Plan;
  readonly revision: number;
  readonly now: Instant;
  /** A swap of the accepted plan is asked about: until that is answered nobody knows what holds. */
  readonly isAsked: boolean;
};

/** The next look, and what to say at it; null: keep silent. */
export function look(
  before: Look | null,
  { state, plan, revision, now, isAsked }: Seen,
): { readonly look: Look; readonly say: string | null } {
  const act = actKey(state, plan);
  if (before === null || before.revision !== revision || state.status === 'nothing-accepted')
    return { look: { revision, act, spoken: new Map([[act, now]]) }, say: null };
  const last = before.spoken.get(act);
  if (act === before.act || (last !== undefined && now - last < QUIET_MS))
    return { look: { ...before, act }, say: null };
  return {
    look: { ...before, act, spoken: new Map([...before.spoken, [act, now]]) },
    say:
      state.status === 'next-act-changed'
        ? state.differences.join(' ')
        : isAsked
          ? null
          : holdsAgain(state, plan),
  };
}

/** Nothing where no run is to come, or where what is planned for one is too lean: no plan holds then. */
function holdsAgain({ accepted }: { readonly accepted: string }, { runs }: Plan): string | null {
  const toCome = runs.filter(({ state }) => state === 'planned');
  return toCome.length === 0 || toCome.some(isDangerous) ? null : `Your plan holds again. ${accepted}`;
}
