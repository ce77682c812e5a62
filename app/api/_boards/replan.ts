import { createHash } from 'node:crypto';
import { boardBody } from '@/lib/board/board-to-json';
import { expiryOf } from '@/lib/board/expiry';
import { type BoardMachine, type BoardMemory, type BoardMessage, planBoard } from '@/lib/board/plan-board';
import type { BoardNight } from '@/lib/contract/board';
import type { BoardAnswer } from '@/lib/contract/board-answer';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import type { BoardChange, NewMessage } from '@/lib/posted/board-rows';
import type { BoardRow } from '@/lib/posted/tables';
import { ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import type { BoardDeps } from './board-deps';
import { boardHours } from './board-hours';

/** What a planning starts from. */
export type BoardAsKept = Pick<
  BoardRow,
  'id' | 'memory' | 'series' | 'first_starts' | 'revision' | 'posted_at'
>;

export type Replanned = {
  readonly change: BoardChange & Pick<BoardRow, 'body' | 'etag' | 'expires_at' | 'memory' | 'series'>;
  readonly messages: readonly NewMessage[];
  readonly machines: readonly BoardMachine[];
  readonly look: Instant | null;
};

type Asked = {
  readonly night: BoardNight;
  readonly revision: number;
  /** The machine whose own people have just said what is in. */
  readonly saidBy: string | null;
  readonly pushKey: string;
};

/** Plans a board again with the newest hours. */
export async function replan(
  board: BoardAsKept,
  { night, revision, saidBy, pushKey }: Asked,
  deps: BoardDeps,
): Promise<Result<Replanned, readonly ContractProblem[]>> {
  const now = deps.now();
  const before: HourSeries | null = board.series === '' ? null : JSON.parse(board.series);
  const hours = await boardHours(night, { deps, postedAt: instant(board.posted_at), before });
  if (!hours.ok) return hours;
  const memory: BoardMemory = JSON.parse(board.memory);
  const series = hours.value;
  const planned = planBoard(night, { memory, series, now, saidBy });
  if (!planned.ok) return planned;
  const { machines, messages, look } = planned.value;
  const answer: BoardAnswer = {
    id: board.id,
    revision,
    expiresAt: isoUtc(expiryOf(night, now)),
    pushKey,
    keeper: null,
    ...boardBody({
      night,
      firstStarts: JSON.parse(board.first_starts),
      machines,
      series,
      postedAt: instant(board.posted_at),
      now,
    }),
  };
  const body = JSON.stringify(answer);
  return ok({
    change: {
      night: JSON.stringify(night),
      memory: JSON.stringify(planned.value.memory),
      series: JSON.stringify({ hours: series.hours, elevation: series.elevation, source: series.source }),
      body,
      etag: boardTag(revision, body),
      revision,
      planned_at: now,
      expires_at: expiryOf(night, now),
    },
    messages: messages.map((message) => messageRow(board.id, message, now)),
    machines,
    look,
  });
}

/** Names the revision, which a change has to name again, and what was told of it. */
export function boardTag(revision: number, body: string): string {
  return `"${revision}.${createHash('sha256').update(body).digest('base64url').slice(0, 16)}"`;
}

/** Room for the longest message a push service has to take, 4096 bytes with its seal (RFC 8030, section 7.2, from memory). */
const MOST_CHARACTERS = 500;

function messageRow(boardId: string, message: BoardMessage, now: Instant): NewMessage {
  const { key, machine, until, words, done, kind } = message;
  const body = words.body.slice(0, MOST_CHARACTERS);
  const payload = { title: words.title, body, kind, board: boardId, machine, done, until };
  return { machine, key, at: now, until, title: words.title, body, payload: JSON.stringify(payload) };
}
