import type * as z from 'zod/mini';
import type { BoardDeps } from '@/app/api/_boards/board-deps';
import { runDue } from '@/app/api/_boards/run-due';
import { POST as postDone } from '@/app/api/boards/[id]/done/route';
import { DELETE, GET, PATCH } from '@/app/api/boards/[id]/route';
import { PUT as follow, DELETE as unfollow } from '@/app/api/boards/[id]/subscriptions/route';
import { POST } from '@/app/api/boards/route';
import type { boardPostSchema } from '@/lib/contract/board';
import { type BoardAnswer, boardAnswerSchema } from '@/lib/contract/board-answer';
import type { PostedDb } from '@/lib/posted/tables';
import { newPushKeys, sendPush } from '@/lib/push/send-push';
import { fail, ok } from '@/lib/result/result';
import { MINUTE_MS } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import { NIGHT } from '@/tests/api/night';
import { boardForecast, POSTED_AT } from './board-forecast';
import { handClock } from './weather-deps';

export type BoardPost = z.input<typeof boardPostSchema>;

/** An invented night with a place, so that its hours come from the forecast. */
export const BOARD: BoardPost = {
  event: { ...NIGHT.event, place: { name: 'Lake', latitude: 46.8, longitude: -92.1 } },
  machines: [
    { id: 'ada', name: 'Ada', machine: NIGHT.machine },
    { id: 'bo', name: 'Bo', machine: { ...NIGHT.machine, name: 'Other twin' } },
  ],
};

const problem = { code: 'all-sources-failed', tries: [], retryAfterSeconds: 60 } as const;

/** Deps of boards in the hands of a test: the clock, the forecast and the push service. */
export function boardWorld(db: PostedDb, { own = [] }: { readonly own?: readonly string[] } = {}) {
  const clock = handClock(POSTED_AT);
  const weather = { degreesAt: (hour: number) => -7 - hour, colder: 0, fails: false, madeAt: POSTED_AT };
  const keys = { ...newPushKeys(), contact: 'mailto:tests@example.org' };
  const faults: unknown[] = [];
  let asked = 0;
  const deps: BoardDeps = {
    now: clock.now,
    db: () => Promise.resolve(db),
    dbIfAny: () => Promise.resolve(db),
    fetchForecast: ({ from, hours, elevation }) => {
      asked += 1;
      if (weather.fails) return Promise.resolve(fail(problem));
      return Promise.resolve(
        ok(boardForecast(from, hours, { ...weather, elevation: elevation ?? metre(0) })),
      );
    },
    pushKeys: () => Promise.resolve(keys),
    ownServices: () => own,
    send: (push, signed) => sendPush(push, { keys: signed, own }),
    me: 'one',
    wake: () => undefined,
  };
  const due = () => runDue({ db, deps }, (error) => faults.push(error));
  return {
    deps,
    clock,
    weather,
    faults,
    asked: () => asked,
    /** Turns the clock minute by minute, and does what is due as the timer would. */
    async pass(minutes: number, step = 1) {
      for (let gone = 0; gone < minutes; gone += step) {
        clock.forward(step * MINUTE_MS);
        await due();
      }
    },
    due,
  };
}

/** The routes go by the process's boards; a test puts its own in their place. */
export function holdBoards(deps: BoardDeps): void {
  Object.assign(globalThis, {
    heavyAirBoards: { deps, ticker: { wake: () => undefined, waits: () => false } },
    heavyAirWrongSecrets: undefined,
    heavyAirPosting: undefined,
  });
}

/** What callers have posted so far counts no more: one caller may not post hundreds at once. */
export function forgetPostings(): void {
  Object.assign(globalThis, { heavyAirPosting: undefined });
}

export function forgetBoards(): void {
  Object.assign(globalThis, {
    heavyAirBoards: undefined,
    heavyAirWrongSecrets: undefined,
    heavyAirPosting: undefined,
  });
}

type Sent = {
  readonly secret?: string | undefined;
  readonly headers?: Record<string, string>;
  readonly body?: unknown;
};

function requestOf(method: string, { secret, headers = {}, body }: Sent): Request {
  return new Request('http://localhost/api/boards', {
    method,
    headers: {
      ...(secret === undefined ? {} : { authorization: `Bearer ${secret}` }),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
}

const of = (id: string) => ({ params: Promise.resolve({ id }) });

export const ask = {
  post: (body: unknown) => POST(requestOf('POST', { body })),
  get: (id: string, sent: Sent) => GET(requestOf('GET', sent), of(id)),
  patch: (id: string, sent: Sent) => PATCH(requestOf('PATCH', sent), of(id)),
  remove: (id: string, sent: Sent) => DELETE(requestOf('DELETE', sent), of(id)),
  done: (id: string, sent: Sent) => postDone(requestOf('POST', sent), of(id)),
  follow: (id: string, sent: Sent) => follow(requestOf('PUT', sent), of(id)),
  unfollow: (id: string, sent: Sent) => unfollow(requestOf('DELETE', sent), of(id)),
};

export type PostedBoard = {
  readonly id: string;
  readonly keepSecret: string;
  readonly followSecret: string;
  readonly expiresAt: string;
};

export async function posted(body: BoardPost = BOARD): Promise<PostedBoard> {
  const response = await ask.post(body);
  const answer: unknown = await response.json();
  if (response.status !== 201) throw new Error(`not posted: ${response.status} ${JSON.stringify(answer)}`);
  return answer as PostedBoard;
}

/** A board as its schema says it is. */
export async function boardOf(response: Response): Promise<BoardAnswer> {
  const body: unknown = await response.json();
  if (response.status !== 200)
    throw new Error(`expected a board, got ${response.status}: ${JSON.stringify(body)}`);
  return boardAnswerSchema.parse(body);
}
