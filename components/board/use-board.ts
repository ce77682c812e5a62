'use client';

import { useCallback, useState } from 'react';
import useSWR from 'swr';
import { type BoardAnswer, boardAnswerSchema } from '@/lib/contract/board-answer';
import type { SettingJson } from '@/lib/contract/event';
import type { BoardDoorway } from '@/lib/share/board-address';
import { BOARD_WORDS } from '@/lib/words/board-page';

/** How often an open page looks. */
const LOOK_MS = 15_000;

type Looked = { readonly board: BoardAnswer } | { readonly gone: string };
export type Said = { readonly machine: string; readonly setting: SettingJson; readonly at?: string };

export type BoardView = {
  readonly board: BoardAnswer | null;
  /** Why there is none, in words; null while it is being opened. */
  readonly gone: string | null;
  /** The server did not answer the last time it was asked. */
  readonly silent: boolean;
  readonly busy: boolean;
  /** What the last act was answered with, where it was refused. */
  readonly problem: string | null;
  readonly say: (said: Said) => void;
  readonly takeDown: () => void;
};

/** A board that is looked at: asked for again and again, and told what is in. */
export function useBoard({ id, secret }: BoardDoorway): BoardView {
  const path = `/api/boards/${id}`;
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const { data, error, mutate } = useSWR<Looked, Error>([path, secret], () => look(path, secret), {
    refreshInterval: LOOK_MS,
    refreshWhenHidden: false,
    keepPreviousData: true,
    errorRetryInterval: LOOK_MS,
  });
  const act = useCallback(
    async (ask: () => Promise<Response>, then: (answer: Response) => Promise<Looked>) => {
      setBusy(true);
      try {
        const answer = await ask();
        if (answer.ok) {
          await mutate(await then(answer), { revalidate: false });
          setProblem(null);
        } else setProblem(await detailOf(answer));
      } catch {
        setProblem(BOARD_WORDS.noAnswer);
      }
      setBusy(false);
    },
    [mutate],
  );
  const headers = { authorization: `Bearer ${secret}` };
  const say = (said: Said) =>
    void act(
      () =>
        fetch(`${path}/done`, {
          method: 'POST',
          headers: { ...headers, 'content-type': 'application/json' },
          body: JSON.stringify(said),
        }),
      // The keeper's look holds more than the answer does.
      () => look(path, secret),
    );
  const takeDown = () =>
    void act(
      () => fetch(path, { method: 'DELETE', headers }),
      () => Promise.resolve({ gone: 'The board was taken down. Nothing of it is kept.' }),
    );
  return {
    board: data !== undefined && 'board' in data ? data.board : null,
    gone: data !== undefined && 'gone' in data ? data.gone : null,
    silent: error !== undefined,
    busy,
    problem,
    say,
    takeDown,
  };
}

/** The browser keeps the answer and asks by its ETag; a nod brings back what it has. */
async function look(path: string, secret: string): Promise<Looked> {
  const answer = await fetch(path, {
    headers: { accept: 'application/json', authorization: `Bearer ${secret}` },
  });
  if (answer.status === 404) return { gone: BOARD_WORDS.gone };
  if (!answer.ok) throw new Error(await detailOf(answer));
  return { board: boardAnswerSchema.parse(await answer.json()) };
}

async function detailOf(answer: Response): Promise<string> {
  const body: unknown = await answer.json().catch(() => null);
  const told = typeof body === 'object' && body !== null && 'detail' in body ? body.detail : null;
  return typeof told === 'string' ? told : BOARD_WORDS.noAnswer;
}
