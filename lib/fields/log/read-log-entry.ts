import { leanestVerdict, verdictFields } from '@/lib/carb/verdicts';
import { airFromJson } from '@/lib/contract/air-from-json';
import { parseWith } from '@/lib/contract/parse';
import type { Path } from '@/lib/contract/problem';
import { clockOf } from '@/lib/fields/clock-text';
import { type FieldReader, type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { formReading } from '@/lib/fields/form-reading';
import { readMainsText } from '@/lib/fields/read-mains';
import { numberAt } from '@/lib/fields/record-path';
import { fieldAt, readFieldRow, readFields } from '@/lib/fields/table-values';
import { type LogRecord, logRecordSchema, type MachineRecord, type Stored } from '@/lib/store/records';
import { fromLocal } from '@/lib/time/local';
import { isoLocal } from '@/lib/time/zone';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { cylindersOf, LOG, type LogDraft } from './log-rows';

type Context = {
  readonly machines: readonly Stored<MachineRecord>[];
  /** The entry that is changed; null for a new one. */
  readonly before: LogRecord | null;
  /** Where a new entry's clock is. */
  readonly zone: string;
};

/** What the draft of a log entry says, or what is wrong with which field. */
export function readLogEntry(draft: LogDraft, context: Context): FormReading<LogRecord> {
  const reader = fieldReader(draft.units);
  return formReading(reader, candidate(draft, reader, context), {
    parse: (entry) => parseWith(logRecordSchema, entry),
    check: ({ air }) => airFromJson(air, ['air']),
    fieldOf: (path: Path) =>
      fieldAt(LOG, draft, path) ?? (path[0] === 'verdicts' ? 'verdict' : String(path[0])),
    zone: context.zone,
  });
}

function candidate(draft: LogDraft, reader: FieldReader, { machines, before, zone }: Context): object {
  const machine = machines.find(({ id }) => id === draft.machineId)?.value.machine;
  const carburettors = machine?.carburettors.length ?? 1;
  const cylinders = cylindersOf(draft, carburettors);
  const leanest = leanestVerdict(cylinders);
  const number = (name: 'trim' | 'sizes', asked: boolean) => () =>
    asked ? readFieldRow(LOG.top.rows[name], draft[name], name, reader) : undefined;
  const read = readFields(LOG, draft, reader, {
    machineId: () => {
      if (machine === undefined) reader.complain('machineId', 'Choose the machine that was run.');
      return draft.machineId;
    },
    clock: () => readTime(draft, reader, { before, zone }),
    mains: () => readMainsText({ name: 'mains', text: draft.mains, carburettors }, reader),
    trim: number('trim', machine?.trim !== undefined),
    sizes: number('sizes', leanest === 'lean' || leanest === 'rich'),
  });
  return {
    eventId: before?.eventId ?? null,
    ...read,
    ...verdictFields(cylinders, numberAt(read, 'sizes') ?? null),
  };
}

/** A time that nobody touched stays as it was, seconds and offset too; a touched one keeps its place's offset. */
function readTime(
  draft: LogDraft,
  reader: FieldReader,
  { before, zone }: Pick<Context, 'before' | 'zone'>,
): string | undefined {
  const { date } = draft;
  const clock = clockOf(draft.clock) ?? draft.clock;
  if (before !== null && date === before.at.slice(0, 10) && clock === before.at.slice(11, 16))
    return before.at;
  const at = fromLocal(date, clock, zone);
  if (!at.ok) {
    reader.complain(at.reason.code === 'not-a-date' ? 'date' : 'clock', clockProblemSentence(at.reason));
    return undefined;
  }
  const offset = before === null ? null : /(Z|[+-]\d{2}:?\d{2})$/i.exec(before.at)?.[0];
  return offset === null || offset === undefined
    ? isoLocal(at.value.at, zone)
    : `${date}T${clock.padStart(5, '0')}:00${offset}`;
}
