import type { BoardNight } from '@/lib/contract/board';
import type { SettingJson } from '@/lib/contract/event';
import type { ContractProblem } from '@/lib/contract/problem';
import { settingJson } from '@/lib/contract/standing-to-json';
import { dataAge, hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import { planMany } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { PlanProblem } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import { type Standing, standingOf } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import { boardMessage, type MessageWords } from '@/lib/words/board';
import { boardRequests, entryId, entryName } from './board-requests';
import { type DueMessage, dueMessages, NOTHING_TOLD, type ToldSoFar } from './due';
import { nextLook, nextTurn } from './next-look';

/** What a board remembers of one machine between two plannings. */
export type MachineMemory = { readonly told: ToldSoFar; readonly accepted: readonly SettingJson[] | null };

export type BoardMemory = Readonly<Record<string, MachineMemory>>;

export type BoardMachine = {
  readonly id: string;
  readonly name: string;
  readonly standing: Standing | null;
  /** Why there is no plan for it. */
  readonly problem: PlanProblem | null;
};

export type BoardMessage = DueMessage & {
  readonly machine: string;
  readonly words: MessageWords;
  /** What "It is in" would say; null where there is nothing to put in. */
  readonly done: SettingJson | null;
};

export type PlannedBoard = {
  readonly machines: readonly BoardMachine[];
  readonly messages: readonly BoardMessage[];
  readonly memory: BoardMemory;
  /** When to plan again; null: never. */
  readonly look: Instant | null;
};

type Given = {
  readonly memory: BoardMemory;
  readonly series: HourSeries;
  readonly now: Instant;
  /** The machine whose own people have just said what is in; null: nobody has. */
  readonly saidBy: string | null;
};

/**
 * A posted night planned once more: what every machine is to do, what its followers are to be told, and when to look
 * again. The same night, memory, hours and moment give the same.
 */
export function planBoard(
  night: BoardNight,
  { memory, series, now, saidBy }: Given,
): Result<PlannedBoard, readonly ContractProblem[]> {
  const read = boardRequests(withAccepted(night, memory), { series, now });
  if (!read.ok) return read;
  const requests = read.value;
  const plans = planMany(requests);
  const told = hoursProvenance(series);
  const stale = dataAge(told, now) === 'stale' || series.hours.length === 0;
  const each = night.machines.map((entry, i) => {
    const [id, name, plan] = [entryId(entry, i), entryName(entry), plans[i]!];
    const before = memory[id] ?? { told: NOTHING_TOLD, accepted: null };
    if (!plan.ok)
      return { machine: { id, name, standing: null, problem: plan.reason }, messages: [], memory: before };
    const standing = standingOf(requests[i]!, plan.value);
    const due = dueMessages(before.told, { standing, now, stale, ownAct: saidBy === id });
    const messages = due.messages.map((message): BoardMessage => {
      const words = boardMessage(message.kind, { name, standing, zone: night.event.timezone }, told.madeAt);
      return { ...message, machine: id, words, done: doneOf(standing) };
    });
    // What waits for its 15 minutes is not the plan that people know.
    const waits = due.told.waiting !== null;
    const accepted = waits ? before.accepted : settingsAsGiven(plan.value).map(settingJson);
    return { machine: { id, name, standing, problem: null }, messages, memory: { told: due.told, accepted } };
  });
  const turn = nextTurn(
    each.flatMap(({ machine: { standing } }) => (standing === null ? [] : [standing])),
    now,
  );
  return ok({
    machines: each.map(({ machine }) => machine),
    messages: each.flatMap(({ messages }) => messages),
    memory: Object.fromEntries(each.map((one) => [one.machine.id, one.memory])),
    look: nextLook(turn, now),
  });
}

/** The jet to name in "It is in": that of the job, while the job is a swap. */
function doneOf({ job }: Standing): SettingJson | null {
  return job.kind === 'swap' ? settingJson(job.swap.to) : null;
}

/** What was told last is what people go by; before that, what was accepted when the night was posted. */
function withAccepted(night: BoardNight, memory: BoardMemory): BoardNight {
  return {
    ...night,
    machines: night.machines.map((entry, i) => {
      const known = memory[entryId(entry, i)]?.accepted;
      const runs = (entry.runs ?? night.event.runs).length;
      return known == null || known.length !== runs ? entry : { ...entry, accepted: [...known] };
    }),
  };
}
