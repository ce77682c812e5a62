'use client';

import { useCallback, useState } from 'react';
import { useQuietWrite } from '@/components/store/use-quiet-write';
import { boardAnswerSchema } from '@/lib/contract/board-answer';
import type { NightRecords } from '@/lib/night/night';
import { type BoardPostJson, boardMark, boardPatchOf, boardPostOf } from '@/lib/share/board-post';
import { heardOnBoard, saidOnBoard } from '@/lib/share/board-said';
import type { EventRecord } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';

type Board = NonNullable<EventRecord['board']>;

const NO_SIGNAL = 'The server does not answer. Nothing was posted. Try again with a signal.';

/** Posting a night, sending what changed, and taking it down; the secrets are kept with the event's record. */
export function usePosting(nights: readonly NightRecords[]) {
  const write = useQuietWrite();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const eventId = nights[0]?.event.id ?? null;
  const keep = useCallback(
    async (board: Board | undefined) => {
      if (write === null || eventId === null) return;
      await write({ table: 'events', id: eventId }, (current) => {
        if (current === null) return null;
        const { board: before, ...record } = current;
        return board === undefined ? record : { ...record, board: { ...before, ...board } };
      });
    },
    [write, eventId],
  );
  const run = useCallback(async (act: () => Promise<string | null>) => {
    setBusy(true);
    setProblem(await act().catch(() => NO_SIGNAL));
    setBusy(false);
  }, []);
  const post = useCallback(() => run(() => postNight(nights, keep)), [nights, keep, run]);
  const sendChanges = useCallback(
    (board: Board) => run(() => patchNight(nights, board, keep)),
    [nights, keep, run],
  );
  const forget = useCallback(() => void keep(undefined), [keep]);
  const takeDown = useCallback((board: Board) => run(() => removeBoard(board, keep)), [keep, run]);
  return { busy, problem, post, sendChanges, takeDown, forget, ready: write !== null };
}

type Keep = (board: Board | undefined) => Promise<void>;

/** This and the next two give null where it is done, else a sentence that says why not. */
async function postNight(nights: readonly NightRecords[], keep: Keep): Promise<string | null> {
  const night = boardPostOf(nights, instant(Date.now()));
  if (night === null) return 'There is nothing to watch yet: give this night a place or hours.';
  const answer = await send('/api/boards', { method: 'POST', body: night });
  if (!answer.ok) return answer.problem;
  const { id, keepSecret, followSecret } = answer.body as Posted;
  await keep({ id, keepSecret, followSecret, ...metOn(nights, night) });
  return null;
}

/** Somebody may say something at a machine between our reading and our writing. */
const MOST_RACES = 4;

async function patchNight(nights: readonly NightRecords[], board: Board, keep: Keep): Promise<string | null> {
  const night = boardPostOf(nights, instant(Date.now()));
  const record = nights[0]?.event.value;
  if (night === null || record === undefined) return null;
  const path = `/api/boards/${board.id}`;
  const secret = board.keepSecret;
  for (let race = 1; ; race += 1) {
    const read = await send(path, { method: 'GET', secret });
    if (read.status === 404) {
      await keep(undefined);
      return 'The board is gone: its night is over, or it was taken down.';
    }
    if (!read.ok) return read.problem;
    const said = saidOnBoard(boardAnswerSchema.parse(read.body));
    const body = boardPatchOf(night, record, said);
    const sent = await send(path, { method: 'PATCH', secret, body, ifMatch: read.etag });
    if (sent.status === 412 && race < MOST_RACES) continue;
    if (!sent.ok) return sent.problem;
    await keep({ ...board, ...metOn(nights, night) });
    return null;
  }
}

/** What both sides know once a night was sent. */
function metOn(nights: readonly NightRecords[], night: BoardPostJson): Pick<Board, 'sent' | 'heard'> {
  const record = nights[0]?.event.value;
  return { sent: boardMark(night), ...(record === undefined ? {} : { heard: heardOnBoard(record) }) };
}

async function removeBoard(board: Board, keep: Keep): Promise<string | null> {
  const sent = await send(`/api/boards/${board.id}`, { method: 'DELETE', secret: board.keepSecret });
  if (!sent.ok && sent.status !== 404) return sent.problem;
  await keep(undefined);
  return null;
}

type Posted = { readonly id: string; readonly keepSecret: string; readonly followSecret: string };
type Sent = {
  readonly method: string;
  readonly secret?: string;
  readonly body?: object;
  readonly ifMatch?: string;
};
type Answer =
  | { readonly ok: true; readonly status: number; readonly body: unknown; readonly etag: string }
  | { readonly ok: false; readonly status: number; readonly problem: string };

async function send(path: string, { method, secret, body, ifMatch }: Sent): Promise<Answer> {
  const answer = await fetch(path, {
    method,
    cache: 'no-store',
    headers: {
      ...(secret === undefined ? {} : { authorization: `Bearer ${secret}` }),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...(ifMatch === undefined ? {} : { 'if-match': ifMatch }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const json = answer.status === 204 ? {} : await answer.json();
  const { status } = answer;
  return answer.ok
    ? { ok: true, status, body: json, etag: answer.headers.get('etag') ?? '' }
    : { ok: false, status, problem: String(json.detail) };
}
