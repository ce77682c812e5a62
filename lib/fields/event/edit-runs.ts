import { fieldReader } from '@/lib/fields/field-reader';
import { instant, MINUTE_MS } from '@/lib/time/instant';
import { type HourStyle, localClock } from '@/lib/time/zone';
import { numberText } from '@/lib/units/entry-text';
import { type EventDraft, emptyRun, type RunDraft } from './event-rows';
import { placeRuns } from './place-runs';
import { runRows } from './run-rows';
import { timedRuns } from './timed-runs';

/** A key that no row has yet. */
function newKey(rows: readonly RunDraft[]): string {
  const numbers = rows.map(({ key }) => Number(/^new-(\d+)$/.exec(key)?.[1] ?? 0));
  return `new-${Math.max(0, ...numbers) + 1}`;
}

/** The draft with one more run, as far after the last as that was after the one before it, and as long. */
export function withAddedRun(draft: EventDraft, hours: HourStyle): EventDraft {
  const { runs, timezone } = draft;
  const placed = placeRuns(runs, draft).map((run) => (run.ok ? run.value : null));
  const [before, last] = [placed.at(-2) ?? null, placed.at(-1) ?? null];
  const row = emptyRun(newKey(runs), nextName(runs));
  if (last === null) return { ...draft, runs: [...runs, row] };
  const gap = before === null ? null : last.start - before.start;
  const start =
    gap === null || gap <= 0 ? '' : localClock(instant(last.start + gap), { zone: timezone, hours });
  const end = `${numberText((last.end - last.start) / MINUTE_MS)} min`;
  return { ...draft, runs: [...runs, { ...row, start, end }] };
}

/** "Round 4" after "Round 3"; the number alone counts up. */
function nextName(runs: readonly RunDraft[]): string {
  const match = /^(.*?)(\d+)$/.exec(runs.at(-1)?.name.trim() ?? '');
  return match === null ? '' : `${match[1]}${Number(match[2]) + 1}`;
}

/** The draft with one run less. Runs that took their day from it keep the day they had. */
export function withoutRun(draft: EventDraft, index: number): EventDraft {
  const before = placeRuns(draft.runs, draft).filter((_, i) => i !== index);
  const rows = draft.runs.filter((_, i) => i !== index);
  const after = placeRuns(rows, draft);
  const runs = rows.map((row, i) => {
    const [was, now] = [before[i], after[i]];
    const moved = was?.ok && !(now?.ok && now.value.day === was.value.day);
    return moved ? { ...row, day: String(was.value.day) } : row;
  });
  return { ...draft, runs };
}

export function withRun(draft: EventDraft, index: number, change: Partial<RunDraft>): EventDraft {
  return { ...draft, runs: draft.runs.map((run, i) => (i === index ? { ...run, ...change } : run)) };
}

/** The draft with its runs one by one; a series that can be read becomes the list, unless there is one already. */
export function asList(draft: EventDraft, hours: HourStyle): EventDraft {
  if (draft.how === 'list') return draft;
  if (draft.runs.length > 0) return { ...draft, how: 'list' };
  const timed = timedRuns(draft, fieldReader(draft.units));
  const rows = timed.map(({ name, start, end }, i) => ({
    key: `new-${i + 1}`,
    name,
    start,
    end,
    weight: 1,
    typicalSeconds: '',
  }));
  return {
    ...draft,
    how: 'list',
    runs: rows.length > 0 ? runRows(rows, { ...draft, hours }) : [emptyRun('new-1', '')],
  };
}
