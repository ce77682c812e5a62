import type { BoardAnswer } from '@/lib/contract/board-answer';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord } from '@/lib/store/records';

type Fitting = NonNullable<EventRecord['fittings']>[string][number];
/** What was said to be in, and since when, by machine. */
export type SaidOnBoard = Readonly<Record<string, readonly Fitting[] | undefined>>;
type Sides = {
  readonly board: readonly Fitting[];
  readonly own: readonly Fitting[];
  /** What both sides had when they last met, by its times. */
  readonly heard: readonly string[];
};

/** Two never say anything of one machine at the same moment: the time names what was said. */
const has = (said: readonly { readonly at: string }[], at: string): boolean =>
  said.some((each) => instantFromJson(each.at) === instantFromJson(at));

const byTime = (said: readonly Fitting[]): readonly Fitting[] =>
  [...said].sort((a, b) => instantFromJson(a.at) - instantFromJson(b.at));

const among = (heard: readonly string[], at: string): boolean =>
  has(
    heard.map((each) => ({ at: each })),
    at,
  );

function sidesOf(record: EventRecord, board: SaidOnBoard, id: string): Sides {
  return {
    board: board[id] ?? [],
    own: record.fittings?.[id] ?? [],
    heard: record.board?.heard?.[id] ?? [],
  };
}

/** All that was said on a board, as its keeper reads it. */
export function saidOnBoard({ night }: Pick<BoardAnswer, 'night'>): SaidOnBoard {
  return Object.fromEntries(
    (night?.machines ?? []).map(({ id, fittings }, i) => [id ?? String(i + 1), fittings]),
  );
}

/** What people said on the board and this record has not heard yet, by machine. */
export function boardNews(
  record: EventRecord,
  board: SaidOnBoard,
): Readonly<Record<string, readonly Fitting[]>> {
  const news = record.machineIds.flatMap((id) => {
    const { board: there, own, heard } = sidesOf(record, board, id);
    // A record that never kept times was posted with what is in; that comes back as no news.
    const known = own.length === 0 ? JSON.stringify(record.fitted[id]?.mains) : '';
    const fresh = there.filter(
      ({ at, setting }) => !has(own, at) && !among(heard, at) && JSON.stringify(setting.mains) !== known,
    );
    return fresh.length === 0 ? [] : [[id, fresh] as const];
  });
  return Object.fromEntries(news);
}

/** As many as a record keeps of one machine. */
const MOST_KEPT = 60;

/** The record with that news; what was said later, by whomever, is what is in. */
export function withBoardNews(record: EventRecord, board: SaidOnBoard): EventRecord {
  const news = boardNews(record, board);
  if (record.board === undefined || Object.keys(news).length === 0) return record;
  let { fitted, fittings = {} } = record;
  const heard = { ...record.board.heard };
  for (const [id, fresh] of Object.entries(news)) {
    const all = byTime([...(fittings[id] ?? []), ...fresh]).slice(-MOST_KEPT);
    fittings = { ...fittings, [id]: [...all] };
    fitted = { ...fitted, [id]: all.at(-1)!.setting };
    heard[id] = [...(heard[id] ?? []), ...fresh.map(({ at }) => at)];
  }
  return { ...record, fitted, fittings, board: { ...record.board, heard } };
}

/** What the board is to hold of a machine: what only one side said, and nothing that was taken back here. */
export function saidForBoard(record: EventRecord, board: SaidOnBoard, id: string): readonly Fitting[] {
  const { board: there, own, heard } = sidesOf(record, board, id);
  return byTime([
    ...there.filter(({ at }) => has(own, at) || !among(heard, at)),
    ...own.filter(({ at }) => !has(there, at) && !among(heard, at)),
  ]);
}

/** Both sides have met on what the board holds now: what it is known to have, so that neither says it again. */
export function heardOnBoard(record: EventRecord): Readonly<Record<string, string[]>> {
  return Object.fromEntries(
    Object.entries(record.fittings ?? {}).map(([id, said]) => [id, said.map(({ at }) => at)]),
  );
}

/** Whether something was said or taken back here that the board does not know. */
export function saysMoreThanBoard(record: EventRecord): boolean {
  return record.machineIds.some((id) => {
    const { own, heard } = sidesOf(record, {}, id);
    return own.some(({ at }) => !among(heard, at)) || heard.some((at) => !has(own, at));
  });
}
