import { fail, type Result } from '@/lib/result/result';
import type { FetchProblem } from '@/lib/weather/problem';
import { createFairLine, type FairLine } from './fair-line';

/**
 * Sends what has gathered: waits for room, takes the items and answers them in their order, or says why none of them can
 * be answered. Taking may give none, where nobody waits any more.
 */
export type Send<I, O, R> = (
  take: () => readonly I[],
) => Promise<Result<readonly Result<O, R>[], R | FetchProblem>>;

export type Batching<I, O, R> = {
  /** Only questions of one group go together. */
  readonly group: string;
  readonly caller: string;
  readonly deadline: AbortSignal;
  readonly send: Send<I, O, R>;
};

/** Gathers single questions while there is no room for a request, and asks them together. */
export type Batches<I, O, R> = {
  readonly ask: (item: I, how: Batching<I, O, R>) => Promise<Result<O, R | FetchProblem>>;
};

type Member<I, O, R> = {
  readonly item: I;
  readonly settle: (answer: Result<O, R | FetchProblem>) => void;
  readonly reject: (error: unknown) => void;
};
type Group<I, O, R> = { readonly line: FairLine<Member<I, O, R>>; sending: boolean };

/** At most so many in one request, and at most so many waiting; callers take turns. */
export function createBatches<I, O, R>(mostTogether: number, mostWaiting: number): Batches<I, O, R> {
  const groups = new Map<string, Group<I, O, R>>();

  async function dispatch(group: Group<I, O, R>, send: Send<I, O, R>): Promise<void> {
    group.sending = true;
    let taken: readonly Member<I, O, R>[] | null = null;
    const take = (most: number): readonly Member<I, O, R>[] => {
      const members: Member<I, O, R>[] = [];
      for (let next = group.line.next(); next !== undefined; next = group.line.next()) {
        members.push(next);
        if (members.length === most) break;
      }
      group.sending = false;
      if (group.line.length() > 0) void dispatch(group, send);
      return members;
    };
    try {
      const answers = await send(() => {
        taken = take(mostTogether);
        return taken.map(({ item }) => item);
      });
      // Whoever was not let in waits no longer either.
      const members = taken ?? take(Number.POSITIVE_INFINITY);
      members.forEach((member, i) => {
        member.settle(answers.ok ? (answers.value[i] ?? fail({ code: 'busy' })) : answers);
      });
    } catch (error) {
      for (const member of taken ?? take(Number.POSITIVE_INFINITY)) member.reject(error);
    }
  }

  return {
    ask(item, { group: name, caller, deadline, send }) {
      const group = groups.get(name) ?? { line: createFairLine(mostWaiting), sending: false };
      groups.set(name, group);
      return new Promise((resolve, reject) => {
        const leave = (): void => {
          group.line.leave(member);
          resolve(fail({ code: 'busy' }));
        };
        const settle = (answer: Result<O, R | FetchProblem>): void => {
          deadline.removeEventListener('abort', leave);
          resolve(answer);
        };
        const member: Member<I, O, R> = { item, settle, reject };
        if (deadline.aborted) return leave();
        deadline.addEventListener('abort', leave);
        group.line.join(caller, member)?.settle(fail({ code: 'busy' }));
        if (!group.sending) void dispatch(group, send);
      });
    },
  };
}
