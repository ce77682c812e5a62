import { createHash } from 'node:crypto';
import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { BOARD } from '@/app/api/_planning/jobs';
import { planApart } from '@/app/api/_planning/plan-apart';
import { expiryOf } from '@/lib/board/expiry';
import type { BoardMemory, BoardMessage } from '@/lib/board/plan-board';
import type { BoardNight } from '@/lib/contract/board';
import type { BoardAnswer } from '@/lib/contract/board-answer';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import type { BoardChange, NewMessage } from '@/lib/posted/board-rows';
import type { BoardRow } from '@/lib/posted/tables';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
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
  /** Problems that no newer forecast will mend, in words; null where there is none. */
  readonly lasting: Problem | null;
  readonly look: Instant | null;
};

type Asked = {
  readonly night: BoardNight;
  readonly revision: number;
  /** The machine whose own people have just said what is in. */
  readonly saidBy: string | null;
  /** Whose share of the planning it is. */
  readonly caller: string;
};

/** Plans a board again with the newest hours, beside those who answer; the problem says why it cannot be planned, or not now. */
export async function replan(
  board: BoardAsKept,
  { night, revision, saidBy, caller }: Asked,
  deps: BoardDeps,
): Promise<Result<Replanned, Problem>> {
  const now = deps.now();
  const before: HourSeries | null = board.series === '' ? null : JSON.parse(board.series);
  const postedAt = instant(board.posted_at);
  const hours = await boardHours(night, { deps, postedAt, before });
  if (!hours.ok) return fail(nightProblem(hours.reason, night));
  const { elevation, source } = hours.value;
  const series: HourSeries = { hours: hours.value.hours, elevation, source };
  const memory: BoardMemory = JSON.parse(board.memory);
  const firstStarts = JSON.parse(board.first_starts);
  const apart = await planApart(BOARD, {
    caller,
    input: [night, { memory, series, now, saidBy, firstStarts, postedAt }],
  });
  if (!apart.ok) return apart;
  const planned = apart.value;
  if (!planned.ok) return fail(nightProblem(planned.reason, night));
  const { messages, look, lasting } = planned.value;
  const answer: BoardAnswer = {
    id: board.id,
    revision,
    expiresAt: isoUtc(expiryOf(night, now)),
    pushKey: (await deps.pushKeys(await deps.db())).publicKey,
    keeper: null,
    ...planned.value.body,
  };
  const body = JSON.stringify(answer);
  return ok({
    change: {
      night: JSON.stringify(night),
      memory: JSON.stringify(planned.value.memory),
      series: JSON.stringify(series),
      body,
      etag: boardTag(revision, body),
      revision,
      planned_at: now,
      expires_at: expiryOf(night, now),
    },
    messages: messages.map((message) => messageRow(board.id, message, now)),
    lasting: lasting.length > 0 ? nightProblem(lasting, night) : null,
    look,
  });
}

function nightProblem(problems: readonly ContractProblem[], { event }: BoardNight): Problem {
  const voice = {
    zone: event.timezone,
    units: METRIC_UNITS,
    runNames: event.runs.map(({ name }) => name),
  };
  return fieldsProblem(problems, voice);
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
