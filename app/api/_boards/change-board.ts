import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { entryId } from '@/lib/board/board-requests';
import {
  type BoardNight,
  type BoardPatch,
  boardDoneSchema,
  boardPatchSchema,
  boardPostSchema,
} from '@/lib/contract/board';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { parseWith } from '@/lib/contract/parse';
import { readBoard, writeBoard } from '@/lib/posted/board-rows';
import type { BoardRow, PostedDb } from '@/lib/posted/tables';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import type { BoardDeps } from './board-deps';
import { type Inside, TAKEN_DOWN } from './door';
import { replan } from './replan';

const VOICE = { zone: 'UTC', units: METRIC_UNITS };
/** As often another may write between our reading and our writing. */
const MOST_RACES = 8;
const MOST_FITTINGS = 200;

type Changed = { readonly row: BoardRow; readonly night: BoardNight };
type Change = {
  readonly night: (night: BoardNight, row: BoardRow) => Result<BoardNight, Problem>;
  readonly saidBy: string | null;
};

/** Changes a board by whoever holds it open, plans it again, and answers as a look at it would. */
async function change(
  { db, door, caller }: Inside,
  deps: BoardDeps,
  { night: next, saidBy }: Change,
): Promise<Result<Changed, Problem>> {
  for (let race = 0; race < MOST_RACES; race += 1) {
    const row = await readBoard(db, door.id);
    if (row === null) return fail(TAKEN_DOWN);
    const night = next(JSON.parse(row.night), row);
    if (!night.ok) return night;
    const written = await writeChanged({ db, deps, caller }, row, { night: night.value, saidBy });
    if (!written.ok) return written;
    if (written.value === null) continue;
    deps.wake();
    return ok({ row: written.value, night: night.value });
  }
  return fail({
    status: 503,
    detail: 'Too many change this board at once. Try again.',
    headers: { 'retry-after': '1' },
  });
}

type Where = { readonly db: PostedDb; readonly deps: BoardDeps; readonly caller: string };

/** null where somebody else has written meanwhile. */
async function writeChanged(
  { db, deps, caller }: Where,
  row: BoardRow,
  { night, saidBy }: { readonly night: BoardNight; readonly saidBy: string | null },
): Promise<Result<BoardRow | null, Problem>> {
  const revision = row.revision + 1;
  const planned = await replan(row, { night, revision, saidBy, caller }, deps);
  if (!planned.ok) return planned;
  if (planned.value.lasting !== null) return fail(planned.value.lasting);
  const written = await writeBoard(db, row, { ...planned.value, now: deps.now() });
  return ok(written ? { ...row, ...planned.value.change, version: row.version + 1 } : null);
}

/** What the keeper changes; `ifMatch` names the revision it was made from. */
export function patchBoard(
  inside: Inside,
  deps: BoardDeps,
  { json, ifMatch }: { readonly json: unknown; readonly ifMatch: string | null },
): Promise<Result<Changed, Problem>> {
  const patch = parseWith(boardPatchSchema, json);
  if (!patch.ok) return Promise.resolve(fail(fieldsProblem(patch.reason, VOICE)));
  const from = /^(?:W\/)?"(\d+)\./.exec(ifMatch?.trim() ?? '')?.[1];
  if (from === undefined)
    return Promise.resolve(
      fail({ status: 428, detail: 'Send if-match with the ETag of the board you changed.' }),
    );
  const given = Object.fromEntries(Object.entries(patch.value).filter(([, value]) => value !== undefined));
  return change(inside, deps, {
    saidBy: null,
    night: (night, { revision }) => {
      if (Number(from) !== revision)
        return fail({
          status: 412,
          detail: 'This board was changed since you read it. Read it again, then change it.',
        });
      const machines = patchedMachines(night, patch.value);
      const whole = parseWith(boardPostSchema, { ...night, ...given, machines });
      return whole.ok ? whole : fail(fieldsProblem(whole.reason, VOICE));
    },
  });
}

/** What was said at a machine stays where the keeper says nothing of it. */
function patchedMachines(night: BoardNight, { machines }: BoardPatch): readonly unknown[] {
  if (machines === undefined) return night.machines;
  const known = new Map(night.machines.map((entry, i) => [entryId(entry, i), entry]));
  return machines.map((entry, i) => {
    const before = known.get(entry.id ?? String(i + 1));
    const { fittings = before?.fittings ?? [], made = before?.made ?? [] } = entry;
    return { ...entry, fittings, made };
  });
}

/** Somebody at a machine says what is in it. */
export function tellDone(inside: Inside, deps: BoardDeps, json: unknown): Promise<Result<Changed, Problem>> {
  const done = parseWith(boardDoneSchema, json);
  if (!done.ok) return Promise.resolve(fail(fieldsProblem(done.reason, VOICE)));
  const { machine, setting, at } = done.value;
  return change(inside, deps, {
    saidBy: machine,
    night: (night, row) => {
      const place = night.machines.findIndex((entry, i) => entryId(entry, i) === machine);
      const now = deps.now();
      const since = at === undefined ? now : instantFromJson(at);
      if (place < 0) return fail(noMachine(machine));
      if (since > now || since < row.posted_at - MOST_BEFORE_MS) return fail(badTime(now));
      const machines = night.machines.map((entry, i) =>
        i === place
          ? { ...entry, fittings: [...entry.fittings, { at: isoUtc(since), setting }].slice(-MOST_FITTINGS) }
          : entry,
      );
      return ok({ ...night, machines });
    },
  });
}

/** A jet may well have been in before the night was posted. */
const MOST_BEFORE_MS = 24 * 3_600_000;

export function noMachine(id: string): Problem {
  return { status: 422, detail: `No machine of this board is called ${JSON.stringify(id)}.` };
}

function badTime(now: Instant): Problem {
  return { status: 422, detail: `at is to be a time that has been: it is ${isoUtc(now)} now.` };
}
